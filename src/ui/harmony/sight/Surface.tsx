import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import type { Place } from '../../../photo/mask.ts';
import { say } from '../../words/frame.ts';
import { saySight } from '../../words/sight.ts';
import { chosen, isLit, labels, name, studied } from '../state.ts';
import { isBefore } from './gathered.ts';
import { Loupe } from './Loupe.tsx';
import { look } from './look.ts';
import { Marks } from './Marks.tsx';
import { SURFACE } from './sizes.ts';
import {
  act,
  begin,
  cancel,
  colourAt,
  corners,
  dropCorner,
  end,
  keepWay,
  keptNow,
  marker,
  move,
  tool,
} from './tools.ts';

/** Steps of the arrow keys, without and with Shift, as fractions of the longer edge. */
const STEP = 0.02;
const SMALL_STEP = 0.004;
const ARROWS: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * The photograph as an input surface: pointer, and a marker that the arrow keys move.
 * @param width, height of the stored photograph, px
 */
export function Surface({ url, width, height }: { url: string; width: number; height: number }) {
  const hint = useId();
  const picture = useRef<HTMLImageElement>(null);
  const pressing = useRef(false);
  const isOver = useSignal(false);
  const hasKeys = useSignal(false);
  const spoken = useSignal('');
  const open = tool.value;

  const down = (event: PointerEvent) => {
    if (event.button !== 0 || !event.isPrimary) return;
    pressing.current = true;
    // With an open tool a drag draws; otherwise it scrolls the page.
    if (open !== null) (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    begin(at(event, event.currentTarget));
  };
  const moved = (event: PointerEvent) => {
    isOver.value = true;
    if (pressing.current && open !== null)
      for (const one of event.getCoalescedEvents?.() ?? [event]) move(at(one, event.currentTarget));
    else if (event.pointerType === 'mouse' && open !== null)
      marker.value = at(event, event.currentTarget);
  };
  const up = (event: PointerEvent) => {
    if (!pressing.current) return;
    pressing.current = false;
    move(at(event, event.currentTarget));
    end();
    if (event.pointerType !== 'mouse') isOver.value = false;
  };
  const gone = () => {
    pressing.current = false;
    isOver.value = false;
    cancel();
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = ARROWS[event.key];
    if (arrow) {
      const step = event.shiftKey ? SMALL_STEP : STEP;
      const longer = Math.max(width, height);
      const to = (v: number, by: number, edge: number) =>
        Math.max(0, Math.min(1 - 1e-6, v + (by * step * longer) / edge));
      const [x, y] = marker.value;
      marker.value = [to(x, arrow[0], width), to(y, arrow[1], height)];
      spoken.value = saySight.at(...marker.value, whatIsAt(marker.value));
    } else if (event.key === 'Enter' || event.key === ' ') act();
    else if (event.key === 'Backspace' && corners.value.length > 0) dropCorner();
    else return;
    event.preventDefault();
  };
  return (
    <div
      id={SURFACE}
      class="photograph-picture"
      style={{ '--ratio': `${width / height}`, '--wide': `${width}px` }}
      data-tool={open ?? undefined}
      role="application"
      aria-label={saySight.surface}
      aria-describedby={hint}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the marker is moved by keys
      tabIndex={0}
      onPointerDown={down}
      onPointerMove={moved}
      onPointerUp={up}
      onPointerCancel={gone}
      onPointerLeave={() => {
        if (!pressing.current) isOver.value = false;
      }}
      onKeyDown={key}
      onFocus={(event) => {
        hasKeys.value = event.currentTarget.matches(':focus-visible');
      }}
      onBlur={() => {
        hasKeys.value = false;
      }}
    >
      <img
        ref={picture}
        class={look.value.light && !isBefore.value ? 'set-right' : undefined}
        src={url}
        width={width}
        height={height}
        alt={say.photoOf(name.value || say.unnamed)}
        draggable={false}
      />
      <Dim />
      <Veil />
      <Marks width={width} height={height} isShown={isOver.value || hasKeys.value} />
      {(open === 'light' || open === 'hand') && (isOver.value || hasKeys.value) && (
        <Loupe picture={picture} width={width} height={height} />
      )}
      <p id={hint} class="unseen">
        {open === null
          ? saySight.hint.none
          : open === 'keep'
            ? saySight.hint[keepWay.value]
            : saySight.hint[open]}
      </p>
      <p class="unseen" role="status">
        {spoken.value}
      </p>
    </div>
  );
}

/** Position of an event, fractions 0…1 of width and height; clamped to the photograph's edge. */
function at({ clientX, clientY }: PointerEvent, surface: EventTarget | null): Place {
  const box = (surface as HTMLElement).getBoundingClientRect();
  const within = (v: number) => Math.max(0, Math.min(1 - 1e-6, v));
  return [within((clientX - box.left) / box.width), within((clientY - box.top) / box.height)];
}

/** Description of a place, for the screen reader. */
function whatIsAt(place: Place): string {
  const mask = keptNow.value;
  if (mask) {
    const column = Math.floor(place[0] * mask.width);
    if (mask.data[Math.floor(place[1] * mask.height) * mask.width + column] === 0)
      return saySight.rubbedHere;
  }
  const colour = colourAt(place);
  return colour === null ? saySight.nothingHere : studied.value[colour]!.gathered.name;
}

/** Dims the photograph outside the selected colour's region. */
function Dim() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const map = labels.value;
  const index = chosen.value;
  const isShown = map !== null && isLit.value && tool.value !== 'keep';
  useEffect(() => {
    if (map && isShown)
      paint(canvas.current, map, (i) => (map.data[i] === index ? null : [110, 110, 110, 190]));
  }, [map, index, isShown]);
  return <canvas ref={canvas} hidden={!isShown} />;
}

/** Hatches the erased area; the hatching shows without relying on colour. */
function Veil() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const mask = keptNow.value;
  useEffect(() => {
    if (!mask) return;
    paint(canvas.current, mask, (i) => {
      if (mask.data[i] === 1) return null;
      const line = ((i % mask.width) + Math.floor(i / mask.width)) % 12 < 3;
      return line ? [60, 60, 60, 235] : [140, 140, 140, 225];
    });
  }, [mask]);
  return <canvas ref={canvas} class="veil" hidden={!mask} />;
}

/** Fills a canvas. @param colourOf RGBA, 0…255, of pixel i in row order; null for transparent */
function paint(
  canvas: HTMLCanvasElement | null,
  { width, height }: { width: number; height: number },
  colourOf: (i: number) => readonly [number, number, number, number] | null,
): void {
  const context = canvas?.getContext('2d');
  if (!canvas || !context) return;
  // Assigning a canvas size reallocates its memory even if the size is unchanged.
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  const image = context.createImageData(width, height);
  for (let i = 0; i < width * height; i++) {
    const colour = colourOf(i);
    if (colour) image.data.set(colour, i * 4);
  }
  context.putImageData(image, 0, 0);
}
