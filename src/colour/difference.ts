import type { Lab } from './lab.ts';

const DEG = Math.PI / 180;
const POW_25_7 = 25 ** 7;
const COS_30 = Math.cos(30 * DEG);
const SIN_30 = Math.sin(30 * DEG);
const COS_6 = Math.cos(6 * DEG);
const SIN_6 = Math.sin(6 * DEG);
const COS_63 = Math.cos(63 * DEG);
const SIN_63 = Math.sin(63 * DEG);
const COS_125 = Math.cos(125 * DEG);

/**
 * CIEDE2000 colour difference.
 * @param x, y CIELAB, under the same white
 * @param kL parametric factor for lightness; above 1, lightness counts less
 * @see G. Sharma, W. Wu, E. N. Dalal, Color Res. Appl. 30 (2005) 21-30; CIE 142:2001
 */
export function deltaE00(x: Lab, y: Lab, kL = 1): number {
  return deltaE00Of(x[0], x[1], x[2], y[0], y[1], y[2], kL);
}

/**
 * {@link deltaE00} of six numbers, for loops that must not allocate. Hues are unit vectors, not
 * angles: the mean hue is the bisector and the cosines of its multiples are polynomials. The one
 * angle that the formula needs (in R_T) is computed only where its term exceeds rounding.
 */
export function deltaE00Of(
  L1: number,
  a1: number,
  b1: number,
  L2: number,
  a2: number,
  b2: number,
  kL = 1,
): number {
  const stretch = 1 + shiftOf((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2);
  const p1 = stretch * a1;
  const p2 = stretch * a2;
  const C1 = Math.sqrt(p1 * p1 + b1 * b1);
  const C2 = Math.sqrt(p2 * p2 + b2 * b2);
  const CC = C1 * C2;

  // dH = 2 √(C1 C2) sin(Δh/2), and (x, y) in the direction of the mean hue.
  let dH = 0;
  let x = p1 + p2;
  let y = b1 + b2;
  // Below this at least one colour is neutral, and the products would underflow.
  if (CC > 1e-100) {
    const along = p1 * p2 + b1 * b2;
    const cross = p1 * b2 - p2 * b1;
    if (along >= 0) {
      dH = cross * Math.sqrt(2 / (CC + along));
      x = p1 * C2 + p2 * C1;
      y = b1 * C2 + b2 * C1;
    } else {
      // For nearly opposite hues the bisector vanishes; the chord, perpendicular to it, does not.
      // At exactly 180 degrees the sign follows the printed formula: larger angle minus smaller.
      const turn = cross > 0 || (cross === 0 && (b1 > 0 || (b1 === 0 && p1 > 0))) ? 1 : -1;
      dH = turn * Math.sqrt(2 * (CC - along));
      x = turn * (b2 * C1 - b1 * C2);
      y = turn * (p1 * C2 - p2 * C1);
    }
  }
  const n = Math.sqrt(x * x + y * y);
  const cos = n === 0 ? 1 : x / n;
  const sin = n === 0 ? 0 : y / n;

  const meanC = (C1 + C2) / 2;
  const tL = (L2 - L1) / (kL * lightnessWeight((L1 + L2) / 2));
  const tC = (C2 - C1) / (1 + 0.045 * meanC);
  const tH = dH / (1 + 0.015 * meanC * hueTerm(cos, sin));
  return Math.sqrt(Math.max(0, tL * tL + tC * tC + tH * tH + rotation(meanC, cos, sin) * tC * tH));
}

/** G of the formula, the stretch of a* near the neutral axis. */
function shiftOf(meanC: number): number {
  const c7 = power7(meanC);
  return 0.5 * (1 - Math.sqrt(c7 / (c7 + POW_25_7)));
}

/** S_L. */
function lightnessWeight(meanL: number): number {
  const l50 = (meanL - 50) * (meanL - 50);
  return 1 + (0.015 * l50) / Math.sqrt(20 + l50);
}

/** T of the formula, from the cosine and sine of the mean hue. */
function hueTerm(cos: number, sin: number): number {
  const cos2 = 2 * cos * cos - 1;
  const sin2 = 2 * sin * cos;
  const cos3 = cos * (2 * cos2 - 1);
  const sin3 = sin * (2 * cos2 + 1);
  const cos4 = 2 * cos2 * cos2 - 1;
  const sin4 = 2 * sin2 * cos2;
  return (
    1 -
    0.17 * (cos * COS_30 + sin * SIN_30) +
    0.24 * cos2 +
    0.32 * (cos3 * COS_6 - sin3 * SIN_6) -
    0.2 * (cos4 * COS_63 + sin4 * SIN_63)
  );
}

/** R_T, the rotation of the tolerance ellipses in the blues. */
function rotation(meanC: number, cos: number, sin: number): number {
  // From 0 to 125 degrees the exponential is at most e^-36.
  if (sin >= 0 && cos > COS_125) return 0;
  const angle = Math.atan2(sin, cos) / DEG;
  const away = ((angle < 0 ? angle + 360 : angle) - 275) / 25;
  const c7 = power7(meanC);
  return -2 * Math.sqrt(c7 / (c7 + POW_25_7)) * Math.sin(60 * DEG * Math.exp(-away * away));
}

function power7(v: number): number {
  const v2 = v * v;
  return v2 * v2 * v2 * v;
}

/**
 * CIEDE2000 near a target as a quadratic form: ΔE² ≈ dᵀ M d with d = (dL, da, db). A cheap
 * approximation for searches; judge final results by {@link deltaE00}. At a distance of two units
 * the error is a few per cent of the difference.
 *
 * @param kL parametric factor for lightness, as in {@link deltaE00}
 * @returns M, 9 numbers in row-major order, symmetric; no cross terms between L and a, b
 * @see G. Sharma et al. 2005: the limit of the formula for coinciding colours (its line element)
 */
export function deltaE00QuadraticForm([L, a, b]: Lab, kL = 1): Float64Array {
  const stretch = 1 + shiftOf(Math.sqrt(a * a + b * b));
  const p = stretch * a;
  const C = Math.sqrt(p * p + b * b);
  const cos = C === 0 ? 1 : p / C;
  const sin = C === 0 ? 0 : b / C;
  const SL = kL * lightnessWeight(L);
  const SC = 1 + 0.045 * C;
  const SH = 1 + 0.015 * C * hueTerm(cos, sin);
  const cc = 1 / (SC * SC);
  const hh = 1 / (SH * SH);
  const ch = rotation(C, cos, sin) / (2 * SC * SH);
  // dC = cos·da' + sin·db and dH = −sin·da' + cos·db, with da' = stretch·da.
  const pp = cc * cos * cos + hh * sin * sin - 2 * ch * cos * sin;
  const bb = cc * sin * sin + hh * cos * cos + 2 * ch * cos * sin;
  const pb = (cc - hh) * cos * sin + ch * (cos * cos - sin * sin);
  const ab = stretch * pb;
  return Float64Array.of(1 / (SL * SL), 0, 0, 0, stretch * stretch * pp, ab, 0, ab, bb);
}
