import type { Reflectance } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { seededRandom } from '../random.ts';
import {
  fitWashes,
  predictWash,
  WASH_OPTIONS,
  type Wash,
  type Washes,
  type WashOptions,
} from './watercolour-wash.ts';

/** A measured mixture of watercolour washes. */
export interface MeasuredWashMixture extends Wash {
  /**
   * Key of its pigments, independent of amounts and order; cross-validation holds out whole pairs.
   */
  readonly pair: string;
}

/** Measured washes of single pigments and of the bare paper. */
export interface WashData {
  readonly pigments: readonly string[];
  readonly paper: Reflectance;
  readonly singles: readonly Wash[];
}

/** Predicted and measured colour of one mixture (CIELAB, D65). */
export interface WashPrediction {
  readonly pair: string;
  readonly foreseen: Lab;
  readonly measured: Lab;
}

/** Predicts the colour of every mixture from fitted washes. */
export function predictWashes(
  mixtures: readonly MeasuredWashMixture[],
  washes: Washes,
): WashPrediction[] {
  return mixtures.map(({ pair, amounts, R }) => ({
    pair,
    foreseen: labOf(predictWash(amounts, washes)),
    measured: labOf(R),
  }));
}

/** CIE 1976 colour difference ΔE*ab between prediction and measurement. */
export const deltaEab = ({ foreseen: x, measured: y }: WashPrediction): number =>
  Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);

/**
 * Splits mixtures into folds for cross-validation, whole pairs at a time, in a seeded random order.
 * @param count number of folds, at most the number of pairs
 */
export function crossValidationFolds(
  mixtures: readonly MeasuredWashMixture[],
  count: number,
  seed: number,
): MeasuredWashMixture[][] {
  const pairs = [...new Set(mixtures.map(({ pair }) => pair))].sort();
  // Fisher-Yates shuffle.
  const next = seededRandom(seed);
  for (let i = pairs.length - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [pairs[i], pairs[j]] = [pairs[j]!, pairs[i]!];
  }
  const foldOf = new Map(pairs.map((pair, i) => [pair, i % count]));
  return Array.from({ length: count }, (_, fold) =>
    mixtures.filter(({ pair }) => foldOf.get(pair) === fold),
  );
}

/** Candidate weights of a single-pigment wash; a mixture has weight 1. */
const SINGLE_WASH_WEIGHTS = [0.1, 0.3];

/**
 * Fits washes and mixtures together. The weight of single-pigment washes is chosen from
 * {@link SINGLE_WASH_WEIGHTS} by four-fold cross-validation over the pairs; with fewer than 8 pairs the default
 * options are used.
 * @param from earlier fit of the same pigments, used as the start
 */
export function fitCrossValidated(
  data: WashData,
  mixtures: readonly MeasuredWashMixture[],
  from?: Washes,
): { washes: Washes; options: WashOptions } {
  const join = (part: readonly MeasuredWashMixture[], options: WashOptions, start?: Washes) =>
    fitWashes(data.pigments.length, data.paper, [...data.singles, ...part], options, start);
  let best = WASH_OPTIONS;
  if (new Set(mixtures.map(({ pair }) => pair)).size >= 8) {
    const folds = crossValidationFolds(mixtures, 4, 1);
    // Each fold starts from its own last fit, which has not seen the mixtures it is judged on.
    const last = folds.map(() => from);
    let least = Number.POSITIVE_INFINITY;
    for (const singles of SINGLE_WASH_WEIGHTS) {
      const options = { ...WASH_OPTIONS, singles };
      const loss = folds
        .flatMap((held, i) => {
          const rest = folds.filter((fold) => fold !== held).flat();
          last[i] = join(rest, options, last[i]);
          return predictWashes(held, last[i]);
        })
        // Errors are capped at 10, so that a single outlier cannot decide the choice.
        .reduce((sum, each) => sum + Math.min(deltaEab(each), 10), 0);
      if (loss < least) {
        least = loss;
        best = options;
      }
    }
  }
  return { washes: join(mixtures, best, from), options: best };
}
