/** Reflectance of one band with its derivatives by ln K and ln S. */
interface ReflectanceDerivatives {
  R: number;
  /** dR ÷ d ln K, at most 0. */
  dlnK: number;
  /** dR ÷ d ln S. */
  dlnS: number;
}

/**
 * R∞ with its derivatives. Since R + 1/R = 2 (1 + K/S), dR ÷ d ln(K/S) = −R (1 − R) ÷ (1 + R),
 * which is accurate near black and near white.
 * @param K,S above 0
 * @param out overwritten and returned
 */
export function opaqueSlopes(
  K: number,
  S: number,
  out: ReflectanceDerivatives,
): ReflectanceDerivatives {
  const q = K / S;
  const R = 1 / (1 + q + Math.sqrt(q * (q + 2)));
  out.R = R;
  out.dlnK = (-R * (1 - R)) / (1 + R);
  out.dlnS = -out.dlnK;
  return out;
}

/**
 * overGround() of a film of thickness 1 with its derivatives. With w = K(K + 2S) = u², s = sinh u ÷
 * u and c = cosh u: R = [S s + Rg (c − (K + S) s)] ÷ [(K + S) s + c − Rg S s]; ds/dw = (c − s) ÷ 2w
 * and dc/dw = s ÷ 2. All terms are scaled by e⁻ᵘ, which cancels, so that nothing overflows.
 * @param K,S of the whole film (per unit of thickness times thickness), ≥ 0
 * @param Rg  reflectance of the ground, 0…1
 * @param out overwritten and returned
 */
export function filmSlopes(
  K: number,
  S: number,
  Rg: number,
  out: ReflectanceDerivatives,
): ReflectanceDerivatives {
  const w = K * (K + 2 * S);
  const u = Math.sqrt(w);
  const E = Math.exp(-2 * u);
  const decay = Math.exp(-u);
  const c = (1 + E) / 2;
  const s = u > 1e-12 ? (1 - E) / (2 * u) : 1 - u;
  // c − s cancels for small u: use its series there.
  const ds = w > 1e-3 ? (c - s) / (2 * w) : (decay * (1 + w / 10 + (w * w) / 280)) / 6;
  const dc = s / 2;
  const sum = K + S;
  const N = S * s + Rg * (c - sum * s);
  const D = sum * s + c - Rg * S * s;
  const R = N / D;
  const bentN = S * ds + Rg * (dc - sum * ds);
  const bentD = sum * ds + dc - Rg * S * ds;
  const bent = bentN - R * bentD;
  // ∂w/∂K = 2 (K + S), ∂w/∂S = 2K.
  out.R = R;
  out.dlnK = (K * (2 * sum * bent - s * (Rg + R))) / D;
  out.dlnS = (S * (2 * K * bent + s * (1 - Rg) * (1 - R))) / D;
  return out;
}
