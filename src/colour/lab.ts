import type { Reflectance } from './grid.ts';
import { D65, type Light, toXYZ, type XYZ } from './observer.ts';

/** CIELAB L*, a*, b*, under D65 unless a name says otherwise. */
export type Lab = readonly [L: number, a: number, b: number];

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/**
 * The function f of CIELAB (CIE 015:2018, 8.2.1). Both branches have the same value and slope at
 * EPSILON.
 */
export const labF = (t: number): number => (t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116);

function labInverse(f: number): number {
  const cube = f * f * f;
  return cube > EPSILON ? cube : (116 * f - 16) / KAPPA;
}

/** CIELAB of X, Y, Z relative to a white on the same scale (CIE 015:2018, 8.2.1). */
export function labOfXYZ(X: number, Y: number, Z: number, white: XYZ): Lab {
  const fx = labF(X / white[0]);
  const fy = labF(Y / white[1]);
  const fz = labF(Z / white[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** X, Y, Z of a CIELAB colour on the scale of `white`; inverse of {@link labOfXYZ}. */
export function xyzOfLab([L, a, b]: Lab, white: XYZ): XYZ {
  const fy = (L + 16) / 116;
  return [
    white[0] * labInverse(fy + a / 500),
    white[1] * labInverse(fy),
    white[2] * labInverse(fy - b / 200),
  ];
}

/** Luminance factor Y (0…100) of a lightness L*. */
export const yOfL = (L: number): number => 100 * labInverse((L + 16) / 116);

/** Lightness L* of a luminance factor Y (0…100). */
export const lOfY = (Y: number): number => 116 * labF(Y / 100) - 16;

/** CIELAB of a reflectance under a light, relative to the light's own white. */
export function labOf(R: Reflectance, under: Light = D65): Lab {
  const xyz = toXYZ(R, under, new Float64Array(3));
  return labOfXYZ(xyz[0]!, xyz[1]!, xyz[2]!, under.white);
}

/** Chroma C*ab. */
export const chroma = (lab: Lab): number => Math.sqrt(lab[1] * lab[1] + lab[2] * lab[2]);

/** Chroma below which a hue angle is rounding noise: greys converted through RGB end near 1e-13. */
const NO_HUE = 1e-6;

/** CIELAB hue angle in degrees, 0 ≤ h < 360; null for a neutral (chroma below 1e-6). */
export function hueDeg(lab: Lab): number | null {
  if (chroma(lab) < NO_HUE) return null;
  return angleDeg(lab[1], lab[2]);
}

/** Angle of a point in degrees, 0 ≤ h < 360. */
export function angleDeg(a: number, b: number): number {
  const h = (Math.atan2(b, a) * 180) / Math.PI;
  // A tiny negative angle plus 360 rounds to 360 itself.
  return h < 0 ? (h + 360) % 360 : h;
}

/** CIELAB of lightness, chroma and hue angle in degrees. */
export function labOfLCh(L: number, C: number, hDeg: number): Lab {
  const h = (hDeg * Math.PI) / 180;
  return [L, C * Math.cos(h), C * Math.sin(h)];
}

/** Smallest signed rotation from one hue angle to another in degrees, −180 < turn ≤ 180. */
export function hueTurnDeg(from: number, to: number): number {
  const turn = (((to - from) % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}
