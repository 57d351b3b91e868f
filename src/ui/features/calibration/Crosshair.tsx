import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId, useRef } from 'preact/hooks';
import type { Point } from '../../../calibration/homography.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';

const STEP = 0.02;
const FINE = 0.002;
const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Magnification of the loupe. */
const GLASS = 6;

/**
 * A photograph with a cross-hair that is moved by finger, mouse or keys. `onSet` is called where it
 * is set.
 */
export function Crosshair({
  url,
  alt,
  at,
  onSet,
  id,
  children,
}: {
  url: string;
  alt: string;
  /** Position of the cross-hair, in fractions of width and height. */
  at: Signal<Point>;
  onSet: (at: Point) => void;
  id?: string;
  /** Content drawn over the photograph. */
  children?: ComponentChildren;
}) {
  const hint = useId();
  const isOver = useSignal(false);
  const hasKeys = useSignal(false);
  const spoken = useSignal('');
  const picture = useRef<HTMLImageElement>(null);
  const place = (event: PointerEvent): Point => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const within = (v: number) => Math.max(0, Math.min(1 - 1e-6, v));
    return [
      within((event.clientX - box.left) / box.width),
      within((event.clientY - box.top) / box.height),
    ];
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = ARROWS[event.key];
    if (arrow) {
      const step = event.shiftKey ? FINE : STEP;
      // Before it has loaded the image has no size.
      const [width, height] = [picture.current?.width || 1, picture.current?.height || 1];
      const longer = Math.max(width, height);
      const [x, y] = at.value;
      const to = (v: number, by: number, edge: number) =>
        Math.max(0, Math.min(1 - 1e-6, v + (by * step * longer) / edge));
      at.value = [to(x, arrow[0], width), to(y, arrow[1], height)];
      hasKeys.value = true;
      spoken.value = calibrationTexts.at(...at.value);
    } else if (event.key === 'Enter' || event.key === ' ') onSet(at.value);
    else return;
    event.preventDefault();
  };
  const [x, y] = at.value;
  const shown = isOver.value || hasKeys.value;
  return (
    <div
      id={id}
      class="swatch-surface"
      role="application"
      aria-label={calibrationTexts.surface}
      aria-describedby={hint}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the cross is moved by keys
      tabIndex={0}
      onPointerMove={(event) => {
        isOver.value = true;
        if (event.pointerType === 'mouse') at.value = place(event);
      }}
      onPointerLeave={() => {
        isOver.value = false;
      }}
      onClick={(event) => {
        at.value = place(event as unknown as PointerEvent);
        onSet(at.value);
      }}
      onKeyDown={key}
      onFocus={(event) => {
        hasKeys.value = event.currentTarget.matches(':focus-visible');
      }}
      onBlur={() => {
        hasKeys.value = false;
      }}
    >
      <img ref={picture} src={url} alt={alt} draggable={false} />
      {children}
      {shown && (
        <>
          <span class="swatch-cross" style={{ left: `${100 * x}%`, top: `${100 * y}%` }} />
          <span
            class="swatch-glass"
            data-below={y < 0.4 ? '' : undefined}
            style={{
              left: `clamp(0px, calc(${100 * x}% - 60px), calc(100% - 120px))`,
              top: `calc(${100 * y}% + ${y < 0.4 ? 30 : -150}px)`,
              backgroundImage: `url(${url})`,
              backgroundSize: `${GLASS * (picture.current?.width ?? 300)}px`,
              backgroundPosition: `${60 - GLASS * x * (picture.current?.width ?? 300)}px ${60 - GLASS * y * (picture.current?.height ?? 300)}px`,
            }}
          />
        </>
      )}
      <p id={hint} class="unseen" role="status">
        {spoken.value}
      </p>
    </div>
  );
}
