import type { Lab } from '../colour/lab.ts';
import { linearOfLab, type RgbSpace } from '../colour/rgb.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import { ILLUMINATION_LIMITS } from './illumination.ts';
import type { Rgb } from './robust-mean.ts';

/** Known colours of the references (CIELAB, D65). */
export interface References {
  readonly white: Lab;
  readonly grey: Lab;
}

/**
 * Default references: white card without optical brightener (an estimate), and the 18 % grey of
 * photographers' cards (L* 49.5).
 */
export const USUAL_REFERENCES: References = { white: [95, 0, 0], grey: [49.5, 0, 0] };

/** Correction of exposure, colour cast and contrast: per channel a gain and an exponent. */
export interface ToneCorrection {
  at(rgb: Rgb): Rgb;
  /** Mean exponent; 1 for a camera that is linear between grey and white. */
  readonly exponent: number;
}

/** Plausible range of exponents for a camera. */
const EXPONENTS = [0.6, 1.6] as const;

/**
 * Fits v → gain · v^exponent per channel, so that the white and the grey reference get their known
 * colours.
 * @param white, grey linear RGB of the references, corrected for the illumination
 * @param space       RGB space of the photograph
 */
export function toneCorrectionOf(
  white: Rgb,
  grey: Rgb,
  known: References,
  space: RgbSpace = 'srgb',
): Result<ToneCorrection, CalibrationFault> {
  if (Math.min(...grey) < 1e-3) return fail({ code: 'card-dark' });
  const [wanted, middle] = [linearOfLab(known.white, space), linearOfLab(known.grey, space)];
  const cast = white.map((v, c) => v / wanted[c]!);
  const ratio = Math.max(...cast) / Math.min(...cast);
  if (!(ratio < ILLUMINATION_LIMITS.cast)) return fail({ code: 'card-light-coloured', ratio });
  const exponents = white.map((v, c) => Math.log(wanted[c]! / middle[c]!) / Math.log(v / grey[c]!));
  const exponent = exponents.reduce((sum, v) => sum + v, 0) / 3;
  if (!exponents.every((p) => p > EXPONENTS[0] && p < EXPONENTS[1]))
    return fail({ code: 'card-tone', exponent });
  const gains = white.map((v, c) => wanted[c]! / v ** exponents[c]!);
  const at = (rgb: Rgb): Rgb =>
    rgb.map((v, c) => gains[c]! * Math.max(v, 0) ** exponents[c]!) as unknown as Rgb;
  return ok({ at, exponent });
}
