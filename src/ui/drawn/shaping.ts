import type { Shaped, ShapingJob } from '../../../workers/drawing.ts';
import { Helper } from '../../../workers/jobs.ts';

/** Cached shapes that a worker computes, so that the page stays responsive. */
export interface Answered<Given, Shapes> {
  /** The shapes; computes them here if they are not cached. */
  of(given: Given): Shapes;
  isKnown(given: Given): boolean;
  /**
   * Computes the shapes in the worker; resolves when they are cached, or when the worker has
   * failed. Null without a worker.
   */
  ask(given: Given): Promise<void> | null;
}

let helper: Helper<ShapingJob, Shaped, never> | null | undefined;
const asked = new Map<number, (shapes: Shaped['shapes'] | null) => void>();
let last = 0;

/** The one worker for all drawings, while the page is open; null if there is none. */
function drawing(): typeof helper {
  if (helper !== undefined) return helper;
  if (typeof Worker === 'undefined') {
    helper = null;
    return null;
  }
  helper = new Helper(
    () =>
      new Worker(new URL('../../../workers/drawing.worker.ts', import.meta.url), {
        type: 'module',
      }),
  );
  // If the worker fails, the page computes the shapes itself.
  const alone = () => {
    helper = null;
    for (const answer of asked.values()) answer(null);
    asked.clear();
  };
  helper.onFail = alone;
  helper.onReply = (reply) => {
    if (reply.kind !== 'value') return alone();
    asked.get(reply.value.id)?.(reply.value.shapes);
    asked.delete(reply.value.id);
  };
  return helper;
}

/**
 * Creates a cache of shapes.
 *
 * @param most cache size; the oldest entry goes first
 * @param told the data that determines the shapes: cloneable, and the cache key as JSON
 * @param work computes the shapes, where no worker has done so
 */
export function answered<Given, Told extends ShapingJob['told'], Shapes>(
  kind: ShapingJob['kind'],
  most: number,
  told: (given: Given) => Told,
  work: (told: Told) => Shapes,
): Answered<Given, Shapes> {
  const kept = new Map<string, Shapes>();
  const under = new Map<string, Promise<void>>();
  const nameOf = (given: Given) => JSON.stringify(told(given));
  const keep = (name: string, shapes: Shapes): Shapes => {
    if (kept.size >= most) kept.delete(kept.keys().next().value ?? '');
    kept.set(name, shapes);
    return shapes;
  };
  return {
    of(given) {
      const name = nameOf(given);
      return kept.get(name) ?? keep(name, work(told(given)));
    },
    isKnown: (given) => kept.has(nameOf(given)),
    ask(given) {
      const name = nameOf(given);
      const already = under.get(name);
      if (already) return already;
      const by = drawing();
      if (!by) return null;
      const answer = new Promise<void>((done) => {
        asked.set(++last, (shapes) => {
          under.delete(name);
          if (shapes) keep(name, shapes as Shapes);
          done();
        });
      });
      under.set(name, answer);
      by.send({ id: last, kind, told: told(given) } as ShapingJob);
      return answer;
    },
  };
}
