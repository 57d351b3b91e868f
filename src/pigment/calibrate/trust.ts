import type { Paint } from '../../optics/opaque.ts';
import type { KeptCurve } from '../stock.ts';
import type { Expected } from './expected.ts';
import type { FittedPaint } from './fit.ts';
import { strength } from './strength.ts';
import type { Part } from './swatches.ts';

/** How a pigment on the shelf is known. */
export interface Trust {
  readonly known: 'handbook' | 'photographed' | 'measured';
  /** From its masstone alone. */
  readonly rough: boolean;
  /** ISO day on which it was calibrated; null for the handbook. */
  readonly date: string | null;
  readonly swatches: number;
  readonly piles: number;
  readonly expected: Expected;
}

/**
 * A handbook's curve before anything was seen of the tube: what simulated makers' paints of one name
 * differ by, and what mixtures foreseen from white tints alone did in a measured set of watercolours
 * (about 4, one in ten worse than 9).
 */
export const HANDBOOK: Trust = {
  known: 'handbook',
  rough: false,
  date: null,
  swatches: 0,
  piles: 0,
  expected: { median: 4, tenth: 9 },
};

/** Masstones alone left 5 and 16 in simulation: never promise better for one. */
const ROUGH: Expected = { median: 5, tenth: 16 };

/**
 * Real paints do not quite add as the model has it: even curves fitted to many measured mixtures left a
 * median of about 2 in watercolours. For opaque paste this is an estimate, to be replaced by what the
 * studio's own piles show.
 */
export const MODEL: Expected = { median: 1, tenth: 2.5 };

/** A file's K and S are somebody's measurement of this very paint; how good nobody says: an estimate. */
const FROM_FILE: Expected = { median: 1.5, tenth: 4 };

/** How a paint of the shelf is known, from the curve that is kept with it. */
export function trustOfCurve(curve: KeptCurve | null): Trust {
  if (curve === null) return HANDBOOK;
  const { known, trust } = curve;
  if (trust) return { known, ...trust };
  // One colour shows a masstone and nothing of how it tints.
  const rough = known === 'photographed';
  const expected = rough ? ROUGH : FROM_FILE;
  return { known, rough, date: null, swatches: 0, piles: 0, expected };
}

/** How a freshly fitted paint is known. */
export function trustOf(fitted: FittedPaint, date: string): Trust {
  const { known, rough, swatches, piles, expected } = fitted;
  const kept = rough
    ? {
        median: Math.max(expected.median, ROUGH.median),
        tenth: Math.max(expected.tenth, ROUGH.tenth),
      }
    : expected;
  return { known, rough, date, swatches, piles, expected: kept };
}

/**
 * The error to expect of a mixture: the squares of its paints' own, each by its share of the pile's
 * strength, and the model's. In a studio whose piles were logged, what they showed counts instead of
 * the model's figure.
 *
 * @param paintOf K and S of a pigment
 * @param seen    what logged piles showed lately, see accuracyOf()
 */
export function mixtureError(
  parts: readonly Part[],
  trust: (pigment: string) => Trust,
  paintOf: (pigment: string) => Paint,
  seen: Expected = MODEL,
): Expected {
  const weights = parts.map((part) => part.parts * strength(paintOf(part.pigment)));
  const total = weights.reduce((sum, v) => sum + v, 0);
  if (!(total > 0)) throw new RangeError('a mixture without paint');
  const joined = (of: keyof Expected) =>
    Math.sqrt(
      parts.reduce(
        (sum, part, i) => sum + (weights[i]! / total) * trust(part.pigment).expected[of] ** 2,
        seen[of] ** 2,
      ),
    );
  return { median: joined('median'), tenth: joined('tenth') };
}

const rounded = (v: number): string => (v < 3 ? v.toFixed(1) : Math.round(v).toString());

/** How a pigment is known, in a sentence or two. */
export function trustWords({ known, rough, date, swatches, piles, expected }: Trust): string {
  if (known === 'handbook')
    return 'From the handbook: a guess about your own tube until a swatch of it is photographed. Brush out what you mix before you trust it.';
  const from = [
    ...(swatches > 0 ? [swatches === 1 ? 'one swatch' : `${swatches} swatches`] : []),
    ...(piles > 0 ? [piles === 1 ? 'one pile' : `${piles} piles`] : []),
  ].join(' and ');
  const how = `${known === 'measured' ? 'Measured' : 'Photographed'}${date === null ? '' : ` (${date})`}, ${from === '' ? 'from other swatches' : `from ${from}`}.`;
  const how2 = rough
    ? ' Rough: its masstone alone hides how strongly it tints, so add a tint in white.'
    : '';
  return `${how}${how2} ${errorWords(expected)}`;
}

/** An expected error in words, with its figures. */
export function errorWords(expected: Expected): string {
  const { median, tenth } = expected;
  return `${nearWords(expected)} (about ${rounded(median)}; one in ten is worse than ${rounded(tenth)}).`;
}

/** An expected error in words alone: "Usually only a trained eye sees a difference". */
export const nearWords = ({ median }: Expected): string =>
  median <= 1
    ? 'Usually no difference is seen'
    : median <= 3
      ? 'Usually only a trained eye sees a difference'
      : 'Usually a difference is plain';
