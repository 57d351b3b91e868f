import { type Lab, labOfXYZ, xyzOfLab } from './lab.ts';
import type { XYZ } from './observer.ts';

/** D65 from xy 0.3127, 0.3290, the white of sRGB and Display P3, on the scale Y = 100. */
export const RGB_WHITE: XYZ = [(100 * 0.3127) / 0.329, 100, (100 * (1 - 0.3127 - 0.329)) / 0.329];

export type RgbSpace = 'srgb' | 'display-p3';
type Matrix = readonly [XYZ, XYZ, XYZ];

/** Linear RGB (0…1) to XYZ (Y = 100). IEC 61966-2-1 and SMPTE RP 431-2 primaries with the D65 white. */
export const TO_XYZ: Record<RgbSpace, Matrix> = {
  srgb: [
    [41.239079926595, 35.758433938387, 18.048078840183],
    [21.263900587151, 71.516867876775, 7.219231536073],
    [1.933081871559, 11.919477979462, 95.053215224966],
  ],
  'display-p3': [
    [48.657094864822, 26.566769316909, 19.821728523436],
    [22.897456406974, 69.173852183651, 7.928691409375],
    [0, 4.51133818589, 104.394436890098],
  ],
};

/** XYZ (Y = 100) to linear sRGB; inverse of TO_XYZ.srgb. */
const FROM_XYZ_SRGB: Matrix = [
  [0.03240969941904, -0.0153738317757, -0.00498610760293],
  [-0.00969243636281, 0.01875967501508, 0.00041555057407],
  [0.00055630079697, -0.00203976958889, 0.01056971514243],
];

/** Linear light of an encoded sRGB or Display P3 value, 0…1 (IEC 61966-2-1). */
export const decode = (v: number): number =>
  v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
/** Encoded value of linear light (IEC 61966-2-1); not clamped. */
export const encode = (v: number): number =>
  v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;

/** Linear light of each 8-bit value. */
export const DECODE_8BIT: Float64Array = Float64Array.from({ length: 256 }, (_, v) =>
  decode(v / 255),
);

/** CIELAB (D65) of linear RGB in 0…1. */
export function labOfLinear(r: number, g: number, b: number, space: RgbSpace = 'srgb'): Lab {
  const [mx, my, mz] = TO_XYZ[space];
  return labOfXYZ(
    mx[0] * r + mx[1] * g + mx[2] * b,
    my[0] * r + my[1] * g + my[2] * b,
    mz[0] * r + mz[1] * g + mz[2] * b,
    RGB_WHITE,
  );
}

/** Linear sRGB of a CIELAB (D65) colour; outside 0…1 when no sRGB screen shows it. */
export function linearOfLab(lab: Lab): [r: number, g: number, b: number] {
  const [X, Y, Z] = xyzOfLab(lab, RGB_WHITE);
  const row = (m: XYZ) => m[0] * X + m[1] * Y + m[2] * Z;
  return [row(FROM_XYZ_SRGB[0]), row(FROM_XYZ_SRGB[1]), row(FROM_XYZ_SRGB[2])];
}

/** CIELAB (D65) of #rrggbb. @throws RangeError when it is not six hexadecimal digits after # */
export function labOfHex(hex: string): Lab {
  const match = /^#?([0-9a-f]{6})$/i.exec(hex);
  if (!match) throw new RangeError(`${hex} is not a colour like #a1b2c3`);
  const n = Number.parseInt(match[1]!, 16);
  return labOfLinear(DECODE_8BIT[n >> 16]!, DECODE_8BIT[(n >> 8) & 255]!, DECODE_8BIT[n & 255]!);
}

/** Whether an sRGB screen can show a colour, to half of an 8-bit step. */
export const inSrgb = (lab: Lab): boolean =>
  linearOfLab(lab).every((v) => v > -decode(0.5 / 255) && encode(Math.max(v, 0)) < 1 + 0.5 / 255);
