import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import { whenNear } from '../near-viewport.ts';
import type { ShapeCache } from './shape-cache.ts';

/**
 * Drawings are scheduled one to a task, when they are near the viewport and their shapes are
 * computed. Input is handled between two of them, however many there are and however slow the
 * device is.
 */
const waiting = new Set<() => void>();
const due = new Set<() => void>();
let isCalled = false;

function drawNext(): void {
  isCalled = false;
  const [draw] = due;
  if (!draw) return;
  due.delete(draw);
  if (waiting.delete(draw)) draw();
  scheduleNext();
}

function scheduleNext(): void {
  if (isCalled || due.size === 0) return;
  isCalled = true;
  setTimeout(drawNext);
}

/** Draws everything that waits, synchronously. */
export function drawAll(): void {
  const all = [...waiting];
  waiting.clear();
  due.clear();
  for (const draw of all) draw();
}
// Printing cannot wait for tasks.
if (typeof addEventListener === 'function') addEventListener('beforeprint', drawAll);

/**
 * Calls `draw` in a task of its own once its place is near and its shapes are ready.
 *
 * @param ready starts computing the shapes; null when nothing is missing
 * @returns cancels the call
 */
function scheduleDrawing(
  draw: () => void,
  place: Element | null,
  ready: () => Promise<void> | null,
): () => void {
  waiting.add(draw);
  const isDue = () => {
    if (!waiting.has(draw)) return;
    due.add(draw);
    scheduleNext();
  };
  const leave = whenNear(place, () => {
    const shapes = ready();
    if (shapes) void shapes.then(isDue);
    else isDue();
  });
  return () => {
    leave();
    waiting.delete(draw);
    due.delete(draw);
  };
}

let isAtOnce = false;
/** Draws everything rendered by `render` synchronously, with its shapes: for print and files. */
export function drawSynchronously(render: () => void): void {
  isAtOnce = true;
  try {
    render();
  } finally {
    isAtOnce = false;
  }
}

/**
 * Schedules a drawing; returns what may be drawn now: the last finished drawing, or null before the
 * first.
 *
 * @param wanted memoised by the caller (useMemo): a new object is a new drawing
 * @param place  an element inside the picture's SVG
 */
export function useScheduledDrawing<T>(
  wanted: T,
  shapes: ShapeCache<T, unknown>,
  place: RefObject<SVGElement | null>,
): T | null {
  const [drawn, setDrawn] = useState<T | null>(isAtOnce ? wanted : null);
  useLayoutEffect(() => {
    if (drawn === wanted) return;
    return scheduleDrawing(
      () => setDrawn(() => wanted),
      place.current?.ownerSVGElement ?? null,
      () => (shapes.has(wanted) ? null : shapes.prefetch(wanted)),
    );
  }, [wanted, drawn, shapes]);
  return drawn;
}
