import { tintingStrength } from '../optics/tinting-strength.ts';
import type { ErrorQuantiles } from '../pigment/stock.ts';
import { type Posterior, predictionError } from './fit-posterior.ts';
import { median } from './robust-mean.ts';

/** Maximum number of other paints that a paint is combined with. */
const PARTNERS = 8;

/**
 * Expected error of mixtures with one paint, from the posterior standard deviation of its usual
 * piles (see {@link typicalPilesOf}). For three components of unequal variance the median distance is
 * about 0.8 of the root mean square, and the 90th percentile about 1.5 of it.
 * @param paint, white indices in the posterior's paints
 */
export function expectedErrorOf(
  posterior: Posterior,
  paint: number,
  white: number,
): ErrorQuantiles {
  const doubts = typicalPilesOf(posterior, paint, white).map((parts) =>
    predictionError(posterior, parts),
  );
  const sorted = doubts.toSorted((p, q) => p - q);
  return {
    median: 0.8 * median(sorted),
    tenth: 1.5 * sorted[Math.floor(0.85 * (sorted.length - 1))]!,
  };
}

/**
 * Typical piles with a paint: alone, 1 : 4 in white, and with other paints at equal strength and at
 * three times its strength, also in white.
 * @returns parts of all paints of the posterior, newly allocated
 */
export function typicalPilesOf(
  { paints }: Posterior,
  paint: number,
  white: number,
): Float64Array[] {
  const pile = (...amounts: readonly (readonly [index: number, parts: number])[]) => {
    const parts = new Float64Array(paints.length);
    for (const [index, amount] of amounts) parts[index]! += amount;
    return parts;
  };
  const own = pile([paint, 1]);
  if (paint === white && paints.length === 1) return [own];
  const others = paints.flatMap((_, i) => (i === paint || i === white ? [] : [i]));
  // Evenly spaced over the shelf, for partners of all colours.
  const step = Math.max(1, Math.floor(others.length / PARTNERS));
  const partners = others.filter((_, at) => at % step === 0).slice(0, PARTNERS);
  const equal = (i: number) => tintingStrength(paints[paint]!) / tintingStrength(paints[i]!);
  return [
    own,
    ...(paint === white ? [] : [pile([paint, 1], [white, 4])]),
    ...partners.flatMap((i) => [
      pile([paint, 1], [i, equal(i)]),
      pile([paint, 1], [i, equal(i) / 3]),
      ...(paint === white ? [] : [pile([paint, 1], [i, equal(i)], [white, 3])]),
    ]),
  ];
}
