import type { Paint } from '../optics/opaque.ts';
import { tintingStrength } from '../optics/tinting-strength.ts';
import type { CurveEvidence, ErrorQuantiles, StoredCurve } from '../pigment/stock.ts';
import type { FittedPaint } from './calibrate-paints.ts';
import type { Part } from './painted-swatch.ts';

/**
 * Expected error of a built-in curve without calibration: from simulated paints of one name by
 * different makers, and from mixtures predicted from white tints alone in a measured set of
 * watercolours (median about 4, 90th percentile 9).
 */
export const HANDBOOK_EVIDENCE: CurveEvidence = {
  known: 'handbook',
  rough: false,
  date: null,
  swatches: 0,
  piles: 0,
  expected: { median: 4, tenth: 9 },
};

/**
 * Lower bound for a paint known by its masstone alone: median and 90th percentile in simulation.
 */
const MASSTONE_ONLY_ERROR: ErrorQuantiles = { median: 5, tenth: 16 };

/**
 * Error of the additive model itself: in watercolours, curves fitted to many measured mixtures left
 * a median of about 2. For opaque paste this is an estimate, to be replaced by the accuracy of the
 * studio's own piles.
 */
export const MODEL_ERROR: ErrorQuantiles = { median: 1, tenth: 2.5 };

/** K and S from a file: measured for this paint with unknown accuracy, so an estimate. */
const FROM_FILE: ErrorQuantiles = { median: 1.5, tenth: 4 };

/** Evidence for a paint from its stored curve; null means the built-in curve. */
export function evidenceOfCurve(curve: StoredCurve | null): CurveEvidence {
  if (curve === null) return HANDBOOK_EVIDENCE;
  const { known, trust } = curve;
  if (trust) return { known, ...trust };
  // A single colour determines the masstone but not the tints.
  const rough = known === 'photographed';
  const expected = rough ? MASSTONE_ONLY_ERROR : FROM_FILE;
  return { known, rough, date: null, swatches: 0, piles: 0, expected };
}

/** Evidence for a newly fitted paint. @param date ISO date */
export function evidenceOfFit(fitted: FittedPaint, date: string): CurveEvidence {
  const { known, rough, swatches, piles, expected } = fitted;
  const kept = rough
    ? {
        median: Math.max(expected.median, MASSTONE_ONLY_ERROR.median),
        tenth: Math.max(expected.tenth, MASSTONE_ONLY_ERROR.tenth),
      }
    : expected;
  return { known, rough, date, swatches, piles, expected: kept };
}

/**
 * Expected error of a mixture: the root of the summed squares of its paints' errors, weighted by
 * their share of the pile's tinting strength, and of the model error.
 *
 * @param paintOf K and S of a pigment
 * @param seen    recent accuracy of logged piles, which replaces the model error; see accuracyOf()
 * @throws RangeError when no part has any strength
 */
export function mixtureError(
  parts: readonly Part[],
  trust: (pigment: string) => CurveEvidence,
  paintOf: (pigment: string) => Paint,
  seen: ErrorQuantiles = MODEL_ERROR,
): ErrorQuantiles {
  const weights = parts.map((part) => part.parts * tintingStrength(paintOf(part.pigment)));
  const total = weights.reduce((sum, v) => sum + v, 0);
  if (!(total > 0)) throw new RangeError('a mixture without paint');
  const joined = (of: keyof ErrorQuantiles) =>
    Math.sqrt(
      parts.reduce(
        (sum, part, i) => sum + (weights[i]! / total) * trust(part.pigment).expected[of] ** 2,
        seen[of] ** 2,
      ),
    );
  return { median: joined('median'), tenth: joined('tenth') };
}
