import { angleDeg, type Lab } from './lab.ts';
import { dot, inverse, type Matrix, multiplyColumn } from './matrix.ts';
import { labOfLinear, linearOfLab } from './rgb.ts';

/**
 * OKLab, L about 0…1. Used to keep hue constant: CIELAB's hue drifts when a blue is lightened or
 * darkened.
 */
type Oklab = readonly [L: number, a: number, b: number];

/**
 * Linear sRGB to cone signals. This direct matrix is used throughout: it maps white to (1, 0, 0)
 * within 4e-8, while the route through XYZ is off by 1e-4. Source: B. Ottosson, A perceptual color
 * space for image processing, 2020.
 */
export const OKLAB_CONES: Matrix = [
  [0.4122214708, 0.5363325363, 0.0514459929],
  [0.2119034982, 0.6806995451, 0.1073969566],
  [0.0883024619, 0.2817188376, 0.6299787005],
];
/** Cube roots of cone signals to OKLab. */
export const OKLAB_OPPONENT: Matrix = [
  [0.2104542553, 0.793617785, -0.0040720468],
  [1.9779984951, -2.428592205, 0.4505937099],
  [0.0259040371, 0.7827717662, -0.808675766],
];
/** Computed, because with the rounded published inverses a round trip would be off by 1e-7. */
export const FROM_CONES = inverse(OKLAB_CONES);
export const FROM_OPPONENT = inverse(OKLAB_OPPONENT);

/**
 * OKLab of linear sRGB; values outside 0…1 are colours outside sRGB.
 * @param out 3 values, overwritten and returned
 */
export function oklabOfLinear(r: number, g: number, b: number, out: Float64Array): Float64Array {
  const l = Math.cbrt(dot(OKLAB_CONES[0], r, g, b));
  const m = Math.cbrt(dot(OKLAB_CONES[1], r, g, b));
  const s = Math.cbrt(dot(OKLAB_CONES[2], r, g, b));
  out[0] = dot(OKLAB_OPPONENT[0], l, m, s);
  out[1] = dot(OKLAB_OPPONENT[1], l, m, s);
  out[2] = dot(OKLAB_OPPONENT[2], l, m, s);
  return out;
}

/**
 * Linear sRGB of OKLab; inverse of {@link oklabOfLinear}.
 * @param out 3 values, overwritten and returned; outside 0…1 for colours outside sRGB
 */
export function linearOfOklab(L: number, a: number, b: number, out: Float64Array): Float64Array {
  const l = dot(FROM_OPPONENT[0], L, a, b) ** 3;
  const m = dot(FROM_OPPONENT[1], L, a, b) ** 3;
  const s = dot(FROM_OPPONENT[2], L, a, b) ** 3;
  out[0] = dot(FROM_CONES[0], l, m, s);
  out[1] = dot(FROM_CONES[1], l, m, s);
  out[2] = dot(FROM_CONES[2], l, m, s);
  return out;
}

/** OKLab of a CIELAB (D65) colour, inside or outside sRGB. */
export function oklabOfLab(lab: Lab): Oklab {
  const cones = multiplyColumn(OKLAB_CONES, ...linearOfLab(lab));
  return multiplyColumn(
    OKLAB_OPPONENT,
    Math.cbrt(cones[0]),
    Math.cbrt(cones[1]),
    Math.cbrt(cones[2]),
  );
}

/** CIELAB (D65) of an OKLab colour; inverse of {@link oklabOfLab}. */
export function labOfOklab([L, a, b]: Oklab): Lab {
  const [l, m, s] = multiplyColumn(FROM_OPPONENT, L, a, b);
  return labOfLinear(...multiplyColumn(FROM_CONES, l ** 3, m ** 3, s ** 3));
}

export const oklabChroma = ([, a, b]: Oklab): number => Math.sqrt(a * a + b * b);

/** Chroma (about 0.003 in CIELAB) below which a hue angle is rounding noise. */
const NO_HUE = 1e-5;

/**
 * OKLab hue angle in degrees, 0 ≤ h < 360; null for a neutral (chroma below 1e-5). The angles
 * differ from CIELAB's.
 */
export const oklabHueDeg = (oklab: Oklab): number | null =>
  oklabChroma(oklab) < NO_HUE ? null : angleDeg(oklab[1], oklab[2]);

/** OKLab of lightness, chroma and hue angle in degrees. */
export function oklabOfLCh(L: number, C: number, hDeg: number): Oklab {
  const h = (hDeg * Math.PI) / 180;
  return [L, C * Math.cos(h), C * Math.sin(h)];
}
