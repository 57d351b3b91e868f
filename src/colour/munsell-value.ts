import { type Lab, yOfL } from './lab.ts';

/**
 * Luminance factor Y (0…100, perfect diffuser 100) of a Munsell value V (0…10).
 * @see ASTM D1535: the quintic of Newhall, Nickerson and Judd (1943) on the scale of the perfect
 *   diffuser
 */
export const yOfValue = (V: number): number =>
  V * (1.1914 + V * (-0.22533 + V * (0.23352 + V * (-0.020484 + V * 0.00081939))));

/** dY ÷ dV of {@link yOfValue}. */
const slope = (V: number): number =>
  1.1914 + V * (-0.45066 + V * (0.70056 + V * (-0.081936 + V * 0.00409695)));

/**
 * Munsell value (0…10) of a luminance factor Y; inverse of {@link yOfValue} by Newton's method.
 * Y below 0 gives 0, above 100 gives 10.
 */
export function valueOfY(Y: number): number {
  if (Y <= 0) return 0;
  if (Y >= 100) return 10;
  // The start L*/10 is at most 0.11 off and the quintic is monotone, so a few steps are enough.
  let V = Y > 0.8856 ? 11.6 * Math.cbrt(Y / 100) - 1.6 : Y * 0.9033;
  for (let step = 0; step < 20; step++) {
    const change = (yOfValue(V) - Y) / slope(V);
    V -= change;
    if (Math.abs(change) < 1e-13) break;
  }
  return V;
}

/**
 * Munsell value (0…10) of a CIELAB (D65) colour, from its L* alone. The standard assumes illuminant
 * C; using Y under D65 changes near-neutrals by less than 0.02.
 */
export const munsellValue = (lab: Lab): number => valueOfY(yOfL(lab[0]));
