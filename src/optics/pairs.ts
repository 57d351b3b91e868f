import { chance } from '../chance.ts';
import type { Reflectance } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import {
  fitWashes,
  seenWash,
  WASH_OPTIONS,
  type Wash,
  type Washes,
  type WashOptions,
} from './wash.ts';

/** A measured mixture of washes. */
export interface Mixed extends Wash {
  /** Names its pigments, whatever their amounts and order: what is held back is held back whole. */
  readonly pair: string;
}

/** All that was measured: washes of single pigments and the bare paper. */
export interface WashData {
  readonly pigments: readonly string[];
  readonly paper: Reflectance;
  readonly singles: readonly Wash[];
}

/** One mixture as it was foreseen and as it was. */
export interface Foreseen {
  readonly pair: string;
  readonly foreseen: Lab;
  readonly measured: Lab;
}

export function foresee(mixtures: readonly Mixed[], washes: Washes): Foreseen[] {
  return mixtures.map(({ pair, amounts, R }) => ({
    pair,
    foreseen: labOf(seenWash(amounts, washes)),
    measured: labOf(R),
  }));
}

/** CIELAB difference of 1976. */
export const deltaEab = ({ foreseen: x, measured: y }: Foreseen): number =>
  Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);

/**
 * Mixtures dealt into folds, whole pairs at a time, in an order that the seed alone decides.
 * @param count of folds, at most as many as there are pairs
 */
export function foldsOf(mixtures: readonly Mixed[], count: number, seed: number): Mixed[][] {
  const pairs = [...new Set(mixtures.map(({ pair }) => pair))].sort();
  // Fisher and Yates.
  const next = chance(seed);
  for (let i = pairs.length - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [pairs[i], pairs[j]] = [pairs[j]!, pairs[i]!];
  }
  const foldOf = new Map(pairs.map((pair, i) => [pair, i % count]));
  return Array.from({ length: count }, (_, fold) =>
    mixtures.filter(({ pair }) => foldOf.get(pair) === fold),
  );
}

/** What a single wash may be worth beside a mixture. */
const WORTHS = [0.1, 0.3];

/**
 * Washes and mixtures fitted. What a single wash counts is chosen first: what foresaw best, when a
 * quarter of these mixtures' own pairs at a time were held back. Fewer than 8 pairs are too few to
 * choose by.
 * @param from an earlier fit of the same pigments, to begin from
 */
export function fitChosen(
  data: WashData,
  mixtures: readonly Mixed[],
  from?: Washes,
): { washes: Washes; options: WashOptions } {
  const join = (part: readonly Mixed[], options: WashOptions, start?: Washes) =>
    fitWashes(data.pigments.length, data.paper, [...data.singles, ...part], options, start);
  let best = WASH_OPTIONS;
  if (new Set(mixtures.map(({ pair }) => pair)).size >= 8) {
    const folds = foldsOf(mixtures, 4, 1);
    // Each fold goes on from its own last fit, which saw nothing that it is judged on.
    const last = folds.map(() => from);
    let least = Number.POSITIVE_INFINITY;
    for (const singles of WORTHS) {
      const options = { ...WASH_OPTIONS, singles };
      const loss = folds
        .flatMap((held, i) => {
          const rest = folds.filter((fold) => fold !== held).flat();
          last[i] = join(rest, options, last[i]);
          return foresee(held, last[i]);
        })
        // Past 10 a miss is a miss: one wild mixture shall not decide.
        .reduce((sum, each) => sum + Math.min(deltaEab(each), 10), 0);
      if (loss < least) {
        least = loss;
        best = options;
      }
    }
  }
  return { washes: join(mixtures, best, from), options: best };
}
