import { useLayoutEffect, useState } from 'preact/hooks';

/**
 * Drawings take turns, one to a task, in the order in which they stand on the page: what was touched
 * is answered between two of them, however many hang there and however slow the device.
 */
const waiting = new Set<() => void>();
let isCalled = false;

function next(): void {
  isCalled = false;
  const [draw] = waiting;
  if (!draw) return;
  waiting.delete(draw);
  draw();
  call();
}

function call(): void {
  if (isCalled || waiting.size === 0) return;
  isCalled = true;
  setTimeout(next);
}

/** Draws all that waits, at once. */
export function drawAll(): void {
  for (const draw of waiting) draw();
  waiting.clear();
}
// What is printed waits for nothing.
if (typeof addEventListener === 'function') addEventListener('beforeprint', drawAll);

/** Calls back in a task of its own, unless taken back before. */
function takeTurn(draw: () => void): () => void {
  waiting.add(draw);
  call();
  return () => waiting.delete(draw);
}

/**
 * What is to be drawn, once it may be: at once where that is cheap, else in its turn; until then what
 * was drawn last, or null.
 *
 * @param wanted kept by the caller (useMemo): another object is another drawing
 */
export function useTurn<T>(wanted: T, isCheap: (wanted: T) => boolean): T | null {
  const [drawn, setDrawn] = useState<T | null>(null);
  const now = drawn === wanted || isCheap(wanted);
  useLayoutEffect(() => {
    if (drawn === wanted) return;
    if (now) setDrawn(() => wanted);
    else return takeTurn(() => setDrawn(() => wanted));
  }, [wanted, now, drawn]);
  return now ? wanted : drawn;
}
