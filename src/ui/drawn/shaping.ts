import type { Shaped, ShapingJob } from '../../../workers/drawing.ts';
import { Helper } from '../../../workers/jobs.ts';

/** Shapes that a worker finds while the page stays free, and that are kept. */
export interface Answered<Given, Shapes> {
  /** Worked out here and now where it is not known. */
  of(given: Given): Shapes;
  isKnown(given: Given): boolean;
  /** Has it worked out aside; null where there is nobody to do it. */
  ask(given: Given): Promise<void> | null;
}

let helper: Helper<ShapingJob, Shaped, never> | null | undefined;
const asked = new Map<number, (shapes: Shaped['shapes'] | null) => void>();
let last = 0;

/** One worker for all drawings, for as long as the page is open. */
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
  // Where it cannot start, the page draws by itself.
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
 * @param most how many answers are kept; the oldest goes first
 * @param told what the shapes depend on: plain data, and their name
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
