import type { Shaped, ShapingJob } from '../../../../workers/drawing.ts';
import { ReadyWorker } from '../../../../workers/job-protocol.ts';

/** Cached shapes that a worker computes, so that the page stays responsive. */
export interface ShapeCache<Given, Shapes> {
  /** The shapes; computes them here if they are not cached. */
  get(given: Given): Shapes;
  has(given: Given): boolean;
  /**
   * Computes the shapes in the worker; resolves when they are cached, or when the worker has
   * failed. Null without a worker.
   */
  prefetch(given: Given): Promise<void> | null;
}

let helper: ReadyWorker<ShapingJob, Shaped, never> | null | undefined;
const pendingReplies = new Map<number, (shapes: Shaped['shapes'] | null) => void>();
let last = 0;

/** The one worker for all drawings, while the page is open; null if there is none. */
function shapeWorker(): typeof helper {
  if (helper !== undefined) return helper;
  if (typeof Worker === 'undefined') {
    helper = null;
    return null;
  }
  helper = new ReadyWorker(
    () =>
      new Worker(new URL('../../../../workers/drawing.worker.ts', import.meta.url), {
        type: 'module',
      }),
  );
  // If the worker fails, the page computes the shapes itself.
  const alone = () => {
    helper = null;
    for (const answer of pendingReplies.values()) answer(null);
    pendingReplies.clear();
  };
  helper.onFail = alone;
  helper.onReply = (reply) => {
    if (reply.kind !== 'value') return alone();
    pendingReplies.get(reply.value.id)?.(reply.value.shapes);
    pendingReplies.delete(reply.value.id);
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
export function createShapeCache<Given, Told extends ShapingJob['told'], Shapes>(
  kind: ShapingJob['kind'],
  most: number,
  told: (given: Given) => Told,
  work: (told: Told) => Shapes,
): ShapeCache<Given, Shapes> {
  const kept = new Map<string, Shapes>();
  const under = new Map<string, Promise<void>>();
  const nameOf = (given: Given) => JSON.stringify(told(given));
  const keep = (name: string, shapes: Shapes): Shapes => {
    if (kept.size >= most) kept.delete(kept.keys().next().value ?? '');
    kept.set(name, shapes);
    return shapes;
  };
  return {
    get(given) {
      const name = nameOf(given);
      return kept.get(name) ?? keep(name, work(told(given)));
    },
    has: (given) => kept.has(nameOf(given)),
    prefetch(given) {
      const name = nameOf(given);
      const already = under.get(name);
      if (already) return already;
      const by = shapeWorker();
      if (!by) return null;
      const answer = new Promise<void>((done) => {
        pendingReplies.set(++last, (shapes) => {
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
