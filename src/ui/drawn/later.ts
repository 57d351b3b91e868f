import { createContext } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { WarmWorker } from '../../../workers/jobs.ts';
import {
  type Garment,
  keepShapes,
  knownShapes,
  type Shapes,
  shapesKey,
  shapesOf,
} from './paint.ts';

/**
 * Whether the cloths below are worked out away from the page's own thread and hung one a frame, so
 * that the page answers a touch meanwhile. Their room is kept. For print and copies it stays false.
 */
export const DrawLater = createContext(false);

/** A garment's shapes, ready to be drawn; null while its turn has not come. */
export function useShapes(garment: Garment): Shapes | null {
  const isLater = useContext(DrawLater) && canWait;
  const hung = useRef<{ readonly key: string; readonly shapes: Shapes } | null>(null);
  const [, draw] = useState(0);
  const key = shapesKey(garment);
  if (!isLater && hung.current?.key !== key) hung.current = { key, shapes: shapesOf(garment) };
  // Other folds take their turn too; meanwhile those that hang there take the new colours.
  const isWaiting = hung.current?.key !== key;
  useEffect(() => {
    if (!isWaiting) return;
    return wait({
      key,
      garment,
      hang: (shapes) => {
        hung.current = { key, shapes };
        draw((n) => n + 1);
      },
    });
  }, [key, isWaiting]);
  return hung.current?.shapes ?? null;
}

const canWait = typeof Worker !== 'undefined' && typeof requestAnimationFrame !== 'undefined';
const worker = new WarmWorker(
  () =>
    new Worker(new URL('../../../workers/cloth.worker.ts', import.meta.url), { type: 'module' }),
);

interface Waiting {
  readonly key: string;
  readonly garment: Garment;
  readonly hang: (shapes: Shapes) => void;
}
const line: Waiting[] = [];
let isHanging = false;

/** Stands in the line; the answer leaves it. */
function wait(one: Waiting): () => void {
  line.push(one);
  if (!isHanging) void hangAll();
  return () => {
    const at = line.indexOf(one);
    if (at >= 0) line.splice(at, 1);
  };
}

async function hangAll(): Promise<void> {
  isHanging = true;
  try {
    for (let one = line[0]; one; one = line[0]) {
      const shapes = knownShapes(one.key) ?? keepShapes(one.key, await shapedAway(one.garment));
      await frame();
      // It may have left meanwhile.
      if (line[0] !== one) continue;
      line.shift();
      one.hang(shapes);
    }
  } finally {
    isHanging = false;
  }
}

async function shapedAway(garment: Garment): Promise<Shapes> {
  try {
    return await worker.run<Garment, Shapes, never>(garment, {
      signal: new AbortController().signal,
    });
  } catch {
    // Without its worker a cloth is worked out here: late is better than never.
    return shapesOf(garment);
  }
}

/** The next frame; where none is drawn because the page is hidden, a moment. */
const frame = (): Promise<void> =>
  new Promise((done) => {
    const late = setTimeout(done, 200);
    requestAnimationFrame(() => {
      clearTimeout(late);
      done();
    });
  });
