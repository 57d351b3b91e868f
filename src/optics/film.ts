import { BANDS, type Reflectance, type Spectrum, spectrum } from '../colour/grid.ts';
import { infiniteReflectance, type Paint, PER_MM, sumOfParts } from './opaque.ts';

/** Mixed paint laid in a film. */
export interface Film {
  /** By volume, each ≥ 0, one per paint, not all 0; only their proportions count. */
  readonly parts: ArrayLike<number>;
  readonly paints: readonly Paint[];
  /** Thickness in millimetres, 0…Infinity (Infinity is opaque). */
  readonly filmMm: number;
}

/** A film without ground or surface: reflectance over black and diffuse transmittance, per band. */
export interface FilmOptics {
  readonly R0: Reflectance;
  readonly T: Spectrum<'T'>;
}

/**
 * u of the two-flux (Kubelka-Munk) layer. The equations below never overflow or cancel. With
 * u = X√(K² + 2KS) and everything scaled by e⁻ᵘ:
 * spread = X sinh u ÷ u, D = (K + S) spread + cosh u, R₀ = S·spread ÷ D, T = e⁻ᵘ ÷ D, and over a
 * ground R = R₀ + e⁻²ᵘ Rg ÷ (D (D − S·spread·Rg)), every term positive. K = 0, S = 0 and X = 0 need
 * no special case.
 * @see P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448
 */
const opticalDepth = (K: number, S: number, X: number): number => X * Math.sqrt(K * (K + 2 * S));
/** X (1 − e⁻²ᵘ) ÷ 2u, with its limit X at u = 0. */
const spreadOf = (u: number, X: number): number =>
  u > 1e-12 ? (-X * Math.expm1(-2 * u)) / (2 * u) : X * (1 - u);

/**
 * Reflectance of one band of a film over a ground, before its surface is added.
 * @param K,S per unit of thickness, ≥ 0
 * @param X   thickness, 0…Infinity: 0 shows the ground, Infinity gives R∞
 * @param Rg  reflectance of the ground as seen from inside the paint, 0…1
 * @returns   0…1; NaN if any argument is NaN
 */
export function overGround(K: number, S: number, X: number, Rg: number): number {
  if (X === Number.POSITIVE_INFINITY) return K + S === 0 ? Rg : infiniteReflectance(K, S);
  const u = opticalDepth(K, S, X);
  const spread = spreadOf(u, X);
  const scatter = S * spread;
  const cosh = (1 + Math.exp(-2 * u)) / 2;
  const clear = K * spread + cosh;
  const D = clear + scatter;
  return scatter / D + (Math.exp(-2 * u) * Rg) / (D * (clear + scatter * (1 - Rg)));
}

/** Reflectance over black of one band of a film: {@link overGround} with Rg = 0. */
export const overBlack = (K: number, S: number, X: number): number => overGround(K, S, X, 0);

/** Diffuse transmittance of one band of a film, 0…1. Arguments and NaN as {@link overGround}. */
export function transmittance(K: number, S: number, X: number): number {
  if (X === Number.POSITIVE_INFINITY) return K + S === 0 ? 1 : 0 * (K + S);
  const u = opticalDepth(K, S, X);
  const spread = spreadOf(u, X);
  return Math.exp(-u) / ((K + S) * spread + (1 + Math.exp(-2 * u)) / 2);
}

/**
 * Reflectance of a film over a ground, before the surface is added.
 *
 * @param ground as seen from inside the paint: a measured ground goes through removeSurface first;
 *   BANDS values 0…1; may be `out` itself
 * @param out    BANDS values 0…1, overwritten and returned
 * @throws RangeError for invalid parts (see {@link sumOfParts}), a thickness that is not ≥ 0, and a
 *   band whose K or S is not ≥ 0 or whose ground is not in 0…1
 */
export function filmOverGround(
  { parts, paints, filmMm }: Film,
  ground: Reflectance,
  out: Reflectance,
) {
  const share = PER_MM / sumOfParts(parts, paints.length);
  if (!(filmMm >= 0)) throw new RangeError(`a film ${filmMm} mm thick`);
  for (let band = 0; band < BANDS; band++) {
    const { K, S } = mixed(parts, paints, band, share);
    const Rg = ground[band]!;
    if (!(Rg >= 0 && Rg <= 1)) throw new RangeError(`band ${band}: a ground of ${Rg}`);
    out[band] = overGround(K, S, filmMm, Rg);
  }
  return out;
}

/**
 * Reflectance and transmittance of a film without a ground, in new spectra. They are the same from
 * both sides.
 * @throws RangeError as {@link filmOverGround}
 */
export function filmLayer({ parts, paints, filmMm }: Film): FilmOptics {
  const share = PER_MM / sumOfParts(parts, paints.length);
  if (!(filmMm >= 0)) throw new RangeError(`a film ${filmMm} mm thick`);
  const R0 = spectrum<'R'>();
  const T = spectrum<'T'>();
  for (let band = 0; band < BANDS; band++) {
    const { K, S } = mixed(parts, paints, band, share);
    R0[band] = overBlack(K, S, filmMm);
    T[band] = transmittance(K, S, filmMm);
  }
  return { R0, T };
}

/** K and S of one band of a mixture: Σ pᵢKᵢ and Σ pᵢSᵢ, each multiplied by `share`. */
function mixed(parts: ArrayLike<number>, paints: readonly Paint[], band: number, share: number) {
  let K = 0;
  let S = 0;
  for (let i = 0; i < paints.length; i++) {
    K += parts[i]! * paints[i]!.K[band]!;
    S += parts[i]! * paints[i]!.S[band]!;
  }
  if (!(K >= 0 && S >= 0)) throw new RangeError(`band ${band}: K ${K}, S ${S}`);
  return { K: K * share, S: S * share };
}
