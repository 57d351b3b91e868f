import { doubtOf, type Posterior } from './posterior.ts';
import { median } from './sample.ts';
import { strength } from './strength.ts';

/** How far mixtures may come out otherwise than foreseen (CIEDE2000). */
export interface Expected {
  /** Half of them come out nearer than this. */
  readonly median: number;
  /** One in ten comes out further away. */
  readonly tenth: number;
}

/** At most so many partners of a paint are tried. */
const PARTNERS = 8;

/**
 * The error to expect of mixtures with one paint: its doubts alone, in white, and with other paints at
 * equal strength and a third of it. For three numbers of unlike size the median of a distance is about
 * 0.8 of its root mean square, and one in ten is beyond 1.5 of it.
 */
export function expectedOf(posterior: Posterior, paint: number, white: number): Expected {
  const doubts = pilesOf(posterior, paint, white).map((parts) => doubtOf(posterior, parts));
  const sorted = doubts.toSorted((p, q) => p - q);
  return {
    median: 0.8 * median(sorted),
    tenth: 1.5 * sorted[Math.floor(0.85 * (sorted.length - 1))]!,
  };
}

/** Piles that a paint is usually found in, by parts of all paints of the posterior. */
export function pilesOf({ paints }: Posterior, paint: number, white: number): Float64Array[] {
  const pile = (...amounts: readonly (readonly [index: number, parts: number])[]) => {
    const parts = new Float64Array(paints.length);
    for (const [index, amount] of amounts) parts[index]! += amount;
    return parts;
  };
  const own = pile([paint, 1]);
  if (paint === white && paints.length === 1) return [own];
  const others = paints.flatMap((_, i) => (i === paint || i === white ? [] : [i]));
  // Evenly over the shelf, so that each paint meets others of every colour.
  const step = Math.max(1, Math.floor(others.length / PARTNERS));
  const partners = others.filter((_, at) => at % step === 0).slice(0, PARTNERS);
  const equal = (i: number) => strength(paints[paint]!) / strength(paints[i]!);
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
