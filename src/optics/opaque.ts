import { BANDS, type Reflectance, type Spectrum } from '../colour/grid.ts';

/**
 * Absorption and back-scattering of one paint, each BANDS values ≥ 0, relative to titanium-white
 * paste (mean S over 450-650 nm = 1). Multiply by {@link PER_MM} for a millimetre of film.
 */
export interface Paint {
  readonly K: Spectrum<'K'>;
  readonly S: Spectrum<'S'>;
}

/**
 * K and S per millimetre of film for a relative value of 1. An estimate: with it, a white of S =
 * 0.5 such as lead white hides (contrast 0.98) at about 0.08 mm.
 */
export const PER_MM = 300;

/**
 * Reflectance of an opaque film of mixed paints, before its surface is added.
 * Per band K = Σ pᵢKᵢ and S = Σ pᵢSᵢ, then R∞ = 1 + q − √(q² + 2q) with q = K/S. Computed as
 * 1 ÷ (1 + q + √(q² + 2q)), which is equal: the subtraction loses half the digits at R = 10⁻⁴.
 *
 * @param parts  by volume, each ≥ 0, one per paint, not all 0; only their proportions count
 * @param paints as many, in the same order
 * @param out    BANDS values 0…1, overwritten and returned
 * @throws RangeError when lengths differ, a part is not ≥ 0, a band's K or S is not ≥ 0, or both
 *   are 0 (a film that neither absorbs nor scatters is never opaque)
 * @see P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448. That K and S add: D. R. Duncan, Proc. Phys. Soc.
 *      52 (1940) 390 (reference from memory).
 */
export function opaque(
  parts: ArrayLike<number>,
  paints: readonly Paint[],
  out: Reflectance,
): Reflectance {
  sumOfParts(parts, paints.length);
  for (let band = 0; band < BANDS; band++) {
    let K = 0;
    let S = 0;
    for (let i = 0; i < paints.length; i++) {
      K += parts[i]! * paints[i]!.K[band]!;
      S += parts[i]! * paints[i]!.S[band]!;
    }
    if (!(K >= 0 && S >= 0 && K + S > 0)) throw new RangeError(`band ${band}: K ${K}, S ${S}`);
    out[band] = infiniteReflectance(K, S);
  }
  return out;
}

/**
 * R∞ of K and S ≥ 0: 1 without absorption, 0 without scattering; NaN without both, or if K or S is
 * NaN.
 */
export function infiniteReflectance(K: number, S: number): number {
  const q = K / S;
  return 1 / (1 + q + Math.sqrt(q * (q + 2)));
}

/** K/S of an opaque film: (1 − R∞)² ÷ 2R∞; Infinity at R = 0 (Kubelka and Munk, 1931). */
export const ratioOf = (R: number): number => ((1 - R) * (1 - R)) / (2 * R);

/**
 * Sum of the parts of a mixture.
 * @throws RangeError when there are not `count` parts, one is not ≥ 0 and finite, or all are 0
 */
export function sumOfParts(parts: ArrayLike<number>, count: number): number {
  if (parts.length !== count) throw new RangeError(`${parts.length} parts for ${count} paints`);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    if (!(parts[i]! >= 0 && parts[i]! < Number.POSITIVE_INFINITY))
      throw new RangeError(`part ${i} is ${parts[i]}`);
    sum += parts[i]!;
  }
  if (!(sum > 0)) throw new RangeError('no part is above zero');
  return sum;
}
