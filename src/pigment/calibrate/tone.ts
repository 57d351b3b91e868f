import type { Lab } from '../../colour/lab.ts';
import { linearOfLab, type RgbSpace } from '../../colour/rgb.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { CalibrationFault } from './fault.ts';
import { LIMITS } from './light.ts';
import type { Rgb } from './sample.ts';

/** What the references are known to be (CIELAB, D65). */
export interface References {
  readonly white: Lab;
  readonly grey: Lab;
}

/**
 * Where the painter states nothing: white card without brightener (an estimate), and the 18 % grey of
 * photographers' cards (L* 49.5).
 */
export const USUAL_REFERENCES: References = { white: [95, 0, 0], grey: [49.5, 0, 0] };

/** Sets exposure, colour cast and contrast right: per channel a gain and an exponent. */
export interface Tone {
  at(rgb: Rgb): Rgb;
  /** The mean exponent: 1 is a camera that is faithful between white and grey. */
  readonly exponent: number;
}

/** Exponents beyond these are no camera's. */
const EXPONENTS = [0.6, 1.6] as const;

/**
 * Per channel v → gain · v^exponent, so that the white and the grey reference come out as they are
 * known to be. Both were first divided by the light on the page.
 * @param space of the photograph, whose primaries white and grey are stated in
 */
export function toneOf(
  white: Rgb,
  grey: Rgb,
  known: References,
  space: RgbSpace = 'srgb',
): Result<Tone, CalibrationFault> {
  if (Math.min(...grey) < 1e-3) return fail({ code: 'card-dark' });
  const [wanted, middle] = [linearOfLab(known.white, space), linearOfLab(known.grey, space)];
  const cast = white.map((v, c) => v / wanted[c]!);
  const ratio = Math.max(...cast) / Math.min(...cast);
  if (!(ratio < LIMITS.cast)) return fail({ code: 'card-light-coloured', ratio });
  const exponents = white.map((v, c) => Math.log(wanted[c]! / middle[c]!) / Math.log(v / grey[c]!));
  const exponent = exponents.reduce((sum, v) => sum + v, 0) / 3;
  if (!exponents.every((p) => p > EXPONENTS[0] && p < EXPONENTS[1]))
    return fail({ code: 'card-tone', exponent });
  const gains = white.map((v, c) => wanted[c]! / v ** exponents[c]!);
  const at = (rgb: Rgb): Rgb =>
    rgb.map((v, c) => gains[c]! * Math.max(v, 0) ** exponents[c]!) as unknown as Rgb;
  return ok({ at, exponent });
}
