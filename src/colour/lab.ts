import type { Reflectance } from './grid.ts';
import { D65, type Light, toXYZ, type XYZ } from './observer.ts';

/** CIELAB. Under D65 unless a name says otherwise. */
export type Lab = readonly [L: number, a: number, b: number];

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/** The compressive function of CIELAB; its slope is shared by both branches at EPSILON (CIE 015:2018, 8.2.1). */
export const labF = (t: number): number => (t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116);
const labInverse = (f: number): number => (f ** 3 > EPSILON ? f ** 3 : (116 * f - 16) / KAPPA);

/** CIELAB of X, Y, Z against a white on the same scale (CIE 015:2018, 8.2.1). */
export function labOfXYZ(X: number, Y: number, Z: number, white: XYZ): Lab {
  const fx = labF(X / white[0]);
  const fy = labF(Y / white[1]);
  const fz = labF(Z / white[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** X, Y, Z of a CIELAB colour against a white; exact inverse of {@link labOfXYZ}. */
export function xyzOfLab([L, a, b]: Lab, white: XYZ): XYZ {
  const fy = (L + 16) / 116;
  return [
    white[0] * labInverse(fy + a / 500),
    white[1] * labInverse(fy),
    white[2] * labInverse(fy - b / 200),
  ];
}

/** CIELAB of a reflectance, against the light's own white. */
export function labOf(R: Reflectance, under: Light = D65): Lab {
  const xyz = toXYZ(R, under, new Float64Array(3));
  return labOfXYZ(xyz[0]!, xyz[1]!, xyz[2]!, under.white);
}

/** Chroma C*ab. */
export const chroma = (lab: Lab): number => Math.hypot(lab[1], lab[2]);

/** Hue angle in degrees, 0 ≤ h < 360; null for an exact neutral, which has none. */
export function hueDeg(lab: Lab): number | null {
  if (lab[1] === 0 && lab[2] === 0) return null;
  const h = (Math.atan2(lab[2], lab[1]) * 180) / Math.PI;
  return h < 0 ? h + 360 : h;
}
