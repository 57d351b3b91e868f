import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import type { ImagePoint } from '../../../photo/mask.ts';
import {
  harmonyColours,
  isRegionHighlighted,
  name,
  regionLabels,
  selectedIndex,
} from '../../state/harmony/current-harmony.ts';
import { isUnbalancedShown } from '../../state/harmony/gather-again.ts';
import { gatheringSettings } from '../../state/harmony/gathering-settings.ts';
import { SURFACE_ID } from '../../state/harmony/patch-sizes.ts';
import {
  actAtMarker,
  activeTool,
  beginStroke,
  cancelStroke,
  colourIndexAt,
  continueStroke,
  currentMask,
  dropCorner,
  endTouch,
  markerPosition,
  maskMode,
  outlineCorners,
} from '../../state/harmony/photograph-tools.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { Loupe } from './Loupe.tsx';
import { ToolOverlay } from './ToolOverlay.tsx';

/** Steps of the arrow keys, without and with Shift, as fractions of the longer edge. */
const STEP = 0.02;
const SMALL_STEP = 0.004;
const ARROWS: Readonly<Record<string, ImagePoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * The photograph as an input surface: pointer, and a marker that the arrow keys move.
 * @param width, height of the stored photograph, px
 */
export function PhotographSurface({
  url,
  width,
  height,
}: {
  url: string;
  width: number;
  height: number;
}) {
  const hint = useId();
  const picture = useRef<HTMLImageElement>(null);
  const pressing = useRef(false);
  const isOver = useSignal(false);
  const hasKeys = useSignal(false);
  const spoken = useSignal('');
  const open = activeTool.value;

  const down = (event: PointerEvent) => {
    if (event.button !== 0 || !event.isPrimary) return;
    pressing.current = true;
    // With an open tool a drag draws; otherwise it scrolls the page.
    if (open !== null) (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    beginStroke(positionOf(event, event.currentTarget));
  };
  const moved = (event: PointerEvent) => {
    isOver.value = true;
    if (pressing.current && open !== null)
      for (const one of event.getCoalescedEvents?.() ?? [event])
        continueStroke(positionOf(one, event.currentTarget));
    else if (event.pointerType === 'mouse' && open !== null)
      markerPosition.value = positionOf(event, event.currentTarget);
  };
  const up = (event: PointerEvent) => {
    if (!pressing.current) return;
    pressing.current = false;
    continueStroke(positionOf(event, event.currentTarget));
    endTouch();
    if (event.pointerType !== 'mouse') isOver.value = false;
  };
  const gone = () => {
    pressing.current = false;
    isOver.value = false;
    cancelStroke();
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = ARROWS[event.key];
    if (arrow) {
      const step = event.shiftKey ? SMALL_STEP : STEP;
      const longer = Math.max(width, height);
      const to = (v: number, by: number, edge: number) =>
        Math.max(0, Math.min(1 - 1e-6, v + (by * step * longer) / edge));
      const [x, y] = markerPosition.value;
      markerPosition.value = [to(x, arrow[0], width), to(y, arrow[1], height)];
      spoken.value = photographTexts.at(
        ...markerPosition.value,
        describePlace(markerPosition.value),
      );
    } else if (event.key === 'Enter' || event.key === ' ') actAtMarker();
    else if (event.key === 'Backspace' && outlineCorners.value.length > 0) dropCorner();
    else return;
    event.preventDefault();
  };
  return (
    <div
      id={SURFACE_ID}
      class="photograph-picture"
      style={{ '--ratio': `${width / height}`, '--wide': `${width}px` }}
      data-tool={open ?? undefined}
      role="application"
      aria-label={photographTexts.surface}
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
        class={gatheringSettings.value.light && !isUnbalancedShown.value ? 'set-right' : undefined}
        src={url}
        width={width}
        height={height}
        alt={sharedTexts.photoOf(name.value || sharedTexts.unnamed)}
        draggable={false}
      />
      <DimmedArea />
      <ErasedArea />
      <ToolOverlay width={width} height={height} isShown={isOver.value || hasKeys.value} />
      {(open === 'light' || open === 'hand') && (isOver.value || hasKeys.value) && (
        <Loupe picture={picture} width={width} height={height} />
      )}
      <p id={hint} class="unseen">
        {open === null
          ? photographTexts.hint.none
          : open === 'keep'
            ? photographTexts.hint[maskMode.value]
            : photographTexts.hint[open]}
      </p>
      <p class="unseen" role="status">
        {spoken.value}
      </p>
    </div>
  );
}

/** Position of an event, fractions 0…1 of width and height; clamped to the photograph's edge. */
function positionOf({ clientX, clientY }: PointerEvent, surface: EventTarget | null): ImagePoint {
  const box = (surface as HTMLElement).getBoundingClientRect();
  const within = (v: number) => Math.max(0, Math.min(1 - 1e-6, v));
  return [within((clientX - box.left) / box.width), within((clientY - box.top) / box.height)];
}

/** Description of a place, for the screen reader. */
function describePlace(place: ImagePoint): string {
  const mask = currentMask.value;
  if (mask) {
    const column = Math.floor(place[0] * mask.width);
    if (mask.data[Math.floor(place[1] * mask.height) * mask.width + column] === 0)
      return photographTexts.rubbedHere;
  }
  const colour = colourIndexAt(place);
  return colour === null
    ? photographTexts.nothingHere
    : harmonyColours.value[colour]!.gathered.name;
}

/** Dims the photograph outside the selected colour's region. */
function DimmedArea() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const map = regionLabels.value;
  const index = selectedIndex.value;
  const isShown = map !== null && isRegionHighlighted.value && activeTool.value !== 'keep';
  useEffect(() => {
    if (map && isShown)
      fillPixels(canvas.current, map, (i) => (map.data[i] === index ? null : [110, 110, 110, 190]));
  }, [map, index, isShown]);
  return <canvas ref={canvas} hidden={!isShown} />;
}

/** Hatches the erased area; the hatching shows without relying on colour. */
function ErasedArea() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const mask = currentMask.value;
  useEffect(() => {
    if (!mask) return;
    fillPixels(canvas.current, mask, (i) => {
      if (mask.data[i] === 1) return null;
      const line = ((i % mask.width) + Math.floor(i / mask.width)) % 12 < 3;
      return line ? [60, 60, 60, 235] : [140, 140, 140, 225];
    });
  }, [mask]);
  return <canvas ref={canvas} class="veil" hidden={!mask} />;
}

/** Fills a canvas. @param colourOf RGBA, 0…255, of pixel i in row order; null for transparent */
function fillPixels(
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
