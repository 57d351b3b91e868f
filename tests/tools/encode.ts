/** Encoded value of a linear sRGB or Display P3 value (IEC 61966-2-1); not clamped. */
export const encode = (v: number): number =>
  v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
