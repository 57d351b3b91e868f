import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import type { MixOptions } from '../../src/mixture/mixture-finder.ts';
import type { MixtureAnswer } from '../../src/mixture/mixture-types.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { compileShelf } from '../../src/mixture/search/compiled-shelf.ts';
import { MixtureEvaluator } from '../../src/mixture/search/mixture-evaluator.ts';
import { TargetMetric } from '../../src/mixture/search/target-metric.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { seeded } from '../colour/random.ts';
import { manyPaints } from '../mixture/invented.ts';
import { exhaustive } from '../mixture/reference.ts';

/** One line of the bench's report. */
export interface Row {
  readonly what: string;
  readonly ms: number;
  /** Against the first row; null where that says nothing. */
  readonly ratio: number | null;
  readonly note: string;
}

const COLOURS = 5;
const MOST = 4;

/** The search under measure: called here, or handed to a worker's own entry. */
export type Mix = (
  targets: readonly Lab[],
  shelf: Shelf,
  options: Pick<MixOptions, 'most' | 'quick' | 'alternatives'>,
) => readonly MixtureAnswer[];

const here: Mix = (targets, shelf, options) => {
  const found = findMixtures(targets, shelf, options);
  if (!found.ok) throw new Error(found.fault.code);
  return found.value;
};

/** Three colours within reach and two that no paint reaches: a harmony as photographs give them. */
export function harmony(shelf: Shelf): Lab[] {
  const next = seeded(3);
  const pile = () =>
    predictColour(
      [0, 0, 0].map(() => ({
        pigment: shelf.paints[Math.floor(next() * shelf.paints.length)]!.pigment,
        amount: 0.1 + next(),
      })),
      shelf,
    );
  return [pile(), pile(), pile(), [62, 75, 70], [40, 25, -75]];
}

/** Median of a few runs, after one to warm up. */
function timed(run: () => void, times = 3): number {
  run();
  const all = Array.from({ length: times }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return all.sort((a, b) => a - b)[Math.floor(times / 2)]!;
}

/**
 * A general optimiser over the same sets: logarithmic amounts, residuals linearised by its own
 * finite differences. One set in `every` is run and the time scaled, or it would take minutes.
 */
function general(
  targets: readonly Lab[],
  shelf: Shelf,
  every: number,
): { ms: number; best: number[] } {
  const stock = compileShelf(shelf.paints, shelf);
  const evaluator = new MixtureEvaluator(stock);
  const best = targets.map(() => Number.POSITIVE_INFINITY);
  const set: number[] = [];
  let count = 0;
  const start = performance.now();
  const walk = (from: number) => {
    if (set.length > 1 && count++ % every === 0) {
      for (const [k, target] of targets.entries()) {
        const metric = new TargetMetric(target);
        const look = (x: readonly number[]) => {
          evaluator.n = set.length;
          evaluator.members.set(set);
          evaluator.x.set(x);
          evaluator.evaluateColour();
          metric.exact(evaluator.L, evaluator.a, evaluator.b);
          return metric.r;
        };
        const { parameterValues } = levenbergMarquardt(
          { x: [0, 1, 2], y: [0, 0, 0] },
          (x: number[]) => (i: number) => look(x)[i]!,
          {
            initialValues: set.map(() => 0),
            damping: 1e-2,
            maxIterations: 15,
            gradientDifference: 1e-4,
            errorTolerance: 1e-6,
          },
        );
        look(parameterValues);
        best[k] = Math.min(best[k]!, deltaE00(target, [evaluator.L, evaluator.a, evaluator.b]));
      }
    }
    if (set.length === MOST) return;
    for (let i = from; i < stock.count; i++) {
      set.push(i);
      walk(i + 1);
      set.pop();
    }
  };
  walk(0);
  return { ms: (performance.now() - start) * every, best };
}

/** The shelf and the colours that all times are for. */
export const SIZE = 24;
export const benchShelf = (count = SIZE): Shelf => {
  const shelf = manyPaints(48);
  return { ...shelf, paints: shelf.paints.slice(0, count) };
};

/** Times of the mixture search on this thread, in Node or in a browser's worker. */
export function benchMixture(search: Mix = here): Row[] {
  const first = benchShelf;
  const size = SIZE;
  const bench = first(size);
  const targets = harmony(bench);
  const mix = (from: Shelf, options = {}) => search(targets, from, { most: MOST, ...options });
  const answers = mix(bench);
  const ms = timed(() => mix(bench));
  const rows: Row[] = [
    {
      what: `${COLOURS} colours, ${size} pigments, up to ${MOST}: recipes, parts, alternatives`,
      ms,
      ratio: 1,
      note: `differences ${answers.map((a) => a.deltaE00.toFixed(2)).join(', ')}`,
    },
  ];
  const add = (what: string, time: number, note: string) =>
    rows.push({ what, ms: time, ratio: time / ms, note });
  add(
    'the same, quick',
    timed(() => mix(bench, { quick: true, alternatives: 0 })),
    'while dragging',
  );

  const start = performance.now();
  const plain = targets.map((target) => exhaustive(target, bench, MOST, 1)[MOST]!);
  const worst = Math.max(...answers.map((a, i) => a.deltaE00 - plain[i]!));
  const note = `one start, every set, colours only; the search is worse by ${worst.toFixed(4)} at most`;
  add('plain reference search', performance.now() - start, note);

  const every = 40;
  const slow = general(targets, bench, every);
  add('ml-levenberg-marquardt over the same sets', slow.ms, `one set in ${every} run, scaled`);

  for (const count of [8, 16, 24, 48]) {
    const some = first(count);
    add(
      `growth: ${count} pigments`,
      timed(() => mix(some)),
      'the same five colours',
    );
  }
  return rows;
}
