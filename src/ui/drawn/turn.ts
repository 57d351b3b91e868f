import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import { whenNear } from './near.ts';
import type { Answered } from './shaping.ts';

/**
 * Drawings take turns, one to a task, as they come near what is seen of the page and their shapes become
 * known: what was touched is answered between two of them, however many hang there and however slow the device.
 */
const waiting = new Set<() => void>();
const due = new Set<() => void>();
let isCalled = false;

function next(): void {
  isCalled = false;
  const [draw] = due;
  if (!draw) return;
  due.delete(draw);
  if (waiting.delete(draw)) draw();
  call();
}

function call(): void {
  if (isCalled || due.size === 0) return;
  isCalled = true;
  setTimeout(next);
}

/** Draws all that waits, at once. */
export function drawAll(): void {
  const all = [...waiting];
  waiting.clear();
  due.clear();
  for (const draw of all) draw();
}
// What is printed waits for nothing.
if (typeof addEventListener === 'function') addEventListener('beforeprint', drawAll);

/** Calls back in a task of its own once the shapes are ready, unless taken back before. */
function takeTurn(
  draw: () => void,
  place: Element | null,
  ready: () => Promise<void> | null,
): () => void {
  waiting.add(draw);
  const isDue = () => {
    if (!waiting.has(draw)) return;
    due.add(draw);
    call();
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
/** What is rendered meanwhile is drawn with it, its shapes worked out here and now: for paper and files. */
export function atOnce(render: () => void): void {
  isAtOnce = true;
  try {
    render();
  } finally {
    isAtOnce = false;
  }
}

/**
 * What is to be drawn, once it may be: in its turn, when it is near what is seen of the page and its shapes
 * are known; until then what was drawn last, or null.
 *
 * @param wanted kept by the caller (useMemo): another object is another drawing
 * @param place  within the picture that it is a part of
 */
export function useTurn<T>(
  wanted: T,
  shapes: Answered<T, unknown>,
  place: RefObject<SVGElement | null>,
): T | null {
  const [drawn, setDrawn] = useState<T | null>(isAtOnce ? wanted : null);
  useLayoutEffect(() => {
    if (drawn === wanted) return;
    return takeTurn(
      () => setDrawn(() => wanted),
      place.current?.ownerSVGElement ?? null,
      () => (shapes.isKnown(wanted) ? null : shapes.ask(wanted)),
    );
  }, [wanted, drawn, shapes]);
  return drawn;
}
