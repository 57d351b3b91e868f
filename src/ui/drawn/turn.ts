import { useLayoutEffect, useState } from 'preact/hooks';
import type { Answered } from './shaping.ts';

/**
 * Drawings take turns, one to a task, as their shapes become known: what was touched is answered
 * between two of them, however many hang there and however slow the device.
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
function takeTurn(draw: () => void, ready: Promise<void> | null): () => void {
  waiting.add(draw);
  const isDue = () => {
    if (!waiting.has(draw)) return;
    due.add(draw);
    call();
  };
  if (ready) void ready.then(isDue);
  else isDue();
  return () => {
    waiting.delete(draw);
    due.delete(draw);
  };
}

/**
 * What is to be drawn, once it may be: at once where its shapes are known, else in its turn; until then
 * what was drawn last, or null.
 *
 * @param wanted kept by the caller (useMemo): another object is another drawing
 */
export function useTurn<T>(wanted: T, shapes: Answered<T, unknown>): T | null {
  const [drawn, setDrawn] = useState<T | null>(null);
  const now = drawn === wanted || shapes.isKnown(wanted);
  useLayoutEffect(() => {
    if (drawn === wanted) return;
    if (now) setDrawn(() => wanted);
    else return takeTurn(() => setDrawn(() => wanted), shapes.ask(wanted));
  }, [wanted, now, drawn, shapes]);
  return now ? wanted : drawn;
}
