import { fail, ok, type Result } from '../result.ts';

/** K and S of one band: per unit of the thickness argument, or relative without one. */
interface Coefficients {
  readonly K: number;
  readonly S: number;
}

/**
 * Why two readings determine no K and S. `hides`: the film has the same reflectance over both
 * grounds, so only its K/S is known. `impossible`: no absorbing and scattering film has these
 * reflectances.
 */
type KsInversionFault =
  | { readonly code: 'hides'; readonly ratio: number }
  | { readonly code: 'impossible' };

/**
 * Reflectances of one band of a film over a ground and of the ground, 0…1, both internal (surface
 * removed).
 */
interface FilmOverGroundReading {
  readonly R: number;
  readonly Rg: number;
}

/**
 * K and S of one band from the same film over a dark and a light ground. Kubelka's equation is
 * linear in a = 1 + K/S and c = b coth bSX: a(R + Rg) + c(R − Rg) = 1 + R·Rg. Two grounds determine
 * both, and the dark one need not be perfectly black. Then SX = artanh(b/c) ÷ b.
 *
 * @param thickness in any unit; K and S are per that unit
 * @returns a fault if the readings determine no K and S
 * @throws RangeError when the dark ground is not darker, a reflectance is outside 0…1 or NaN, or
 *   the thickness is not above 0 and finite
 * @see P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448
 */
export function fromBlackAndWhite(
  dark: FilmOverGroundReading,
  light: FilmOverGroundReading,
  thickness: number,
): Result<Coefficients, KsInversionFault> {
  const numbers = [dark.R, dark.Rg, light.R, light.Rg];
  if (!numbers.every((v) => v >= 0 && v <= 1) || !(thickness > 0 && thickness < Infinity))
    throw new RangeError(`reflectances ${numbers.join(', ')} and a thickness of ${thickness}`);
  if (!(dark.Rg < light.Rg)) throw new RangeError('the dark ground is not darker');
  if (light.R < dark.R) return fail({ code: 'impossible' });
  if (light.R - dark.R < 1e-9 * light.R || light.R === 0)
    return fail({ code: 'hides', ratio: ((1 - light.R) * (1 - light.R)) / (2 * light.R) });

  // Without scattering the light passes the film twice: R = Rg·e^(−2KX).
  const clear = dark.R - dark.Rg * (light.R / light.Rg);
  if (Math.abs(clear) < 1e-12) {
    const through = light.R / light.Rg;
    return through <= 1 ? ok({ K: -Math.log(through) / (2 * thickness), S: 0 }) : impossible;
  }
  const p = dark.R + dark.Rg;
  const q = dark.R - dark.Rg;
  const r = light.R + light.Rg;
  const s = light.R - light.Rg;
  const det = p * s - q * r;
  const u = 1 + dark.R * dark.Rg;
  const v = 1 + light.R * light.Rg;
  const a = (u * s - q * v) / det;
  const c = (p * v - u * r) / det;
  // a slightly below 1 by rounding is a film that does not absorb.
  if (!(a > 1 - 1e-9) || !(c > 0)) return impossible;
  const b2 = Math.max(0, (a - 1) * (a + 1));
  const b = Math.sqrt(b2);
  if (b >= c) return impossible;
  // artanh(b/c) ÷ b, with its limit 1/c where nothing absorbs.
  const SX = b < 1e-7 * c ? 1 / c : Math.atanh(b / c) / b;
  const S = SX / thickness;
  return ok({ K: S * Math.max(0, a - 1), S });
}

const impossible = fail({ code: 'impossible' } as const);

/**
 * K and S of one band of a pigment from its opaque masstone and one opaque tint in a white:
 * S = c_w S_w (q_tint − q_w) ÷ [c (q − q_tint)], K = qS with q = K/S. This is ill-conditioned in
 * bands where masstone and tint have nearly the same K/S: fit whole paints with fitPaints() and use
 * this function as a check.
 *
 * @param masstone,tint K/S of both, ≥ 0
 * @param white    K and S of the tint's white
 * @param parts    share of the pigment in the tint, 0…1, both excluded
 * @returns the fault `impossible` if S would be negative or infinite
 * @throws RangeError for a K/S, K or S that is not ≥ 0 and finite, or a share outside 0…1
 * @see D. R. Duncan, Proc. Phys. Soc. 52 (1940) 390 (reference from memory)
 */
export function fromTint(
  masstone: number,
  tint: number,
  white: Coefficients,
  parts: number,
): Result<Coefficients, { readonly code: 'impossible' }> {
  const numbers = [masstone, tint, white.K, white.S];
  if (!numbers.every((v) => v >= 0 && v < Infinity) || !(parts > 0 && parts < 1))
    throw new RangeError(`K/S ${numbers.join(', ')} with a share of ${parts}`);
  const S = ((1 - parts) * (tint * white.S - white.K)) / (parts * (masstone - tint));
  return S >= 0 && S < Infinity ? ok({ K: masstone * S, S }) : impossible;
}
