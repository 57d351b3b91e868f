import { type Lab, labOfXYZ, xyzOfLab } from './lab.ts';
import { dot, inverse, type Matrix, multiplyColumn, multiplyColumnInto } from './matrix.ts';
import type { XYZ } from './observer.ts';

type Chromaticity = readonly [x: number, y: number];

export type RgbSpace = 'srgb' | 'display-p3';

const WHITE: Chromaticity = [0.3127, 0.329];

/** Primaries: IEC 61966-2-1 (sRGB); SMPTE RP 431-2 with the D65 white (Display P3). */
const PRIMARIES: Record<RgbSpace, readonly [Chromaticity, Chromaticity, Chromaticity]> = {
  srgb: [
    [0.64, 0.33],
    [0.3, 0.6],
    [0.15, 0.06],
  ],
  'display-p3': [
    [0.68, 0.32],
    [0.265, 0.69],
    [0.15, 0.06],
  ],
};

const xyzAtY100 = ([x, y]: Chromaticity): XYZ => [(100 * x) / y, 100, (100 * (1 - x - y)) / y];

/** The white of sRGB and Display P3: D65 from xy 0.3127, 0.3290, Y = 100. */
export const RGB_WHITE: XYZ = xyzAtY100(WHITE);

/**
 * RGB to XYZ: the primaries, scaled so that R = G = B gives a multiple of the white (SMPTE RP 177).
 */
function toXYZMatrix(space: RgbSpace): Matrix {
  const [r, g, b] = PRIMARIES[space].map(xyzAtY100) as [XYZ, XYZ, XYZ];
  const columns: Matrix = [
    [r[0], g[0], b[0]],
    [r[1], g[1], b[1]],
    [r[2], g[2], b[2]],
  ];
  const [R, G, B] = multiplyColumn(inverse(columns), ...RGB_WHITE);
  return [
    [r[0] * R, g[0] * G, b[0] * B],
    [r[1] * R, g[1] * G, b[1] * B],
    [r[2] * R, g[2] * G, b[2] * B],
  ];
}

/** Linear RGB (0…1) to XYZ (Y = 100). */
export const TO_XYZ: Record<RgbSpace, Matrix> = {
  srgb: toXYZMatrix('srgb'),
  'display-p3': toXYZMatrix('display-p3'),
};

/** XYZ (Y = 100) to linear RGB: computed inverses of TO_XYZ, because published ones are rounded. */
export const FROM_XYZ: Record<RgbSpace, Matrix> = {
  srgb: inverse(TO_XYZ.srgb),
  'display-p3': inverse(TO_XYZ['display-p3']),
};

/** Linear value of an encoded sRGB or Display P3 value, 0…1 (IEC 61966-2-1). */
export const decode = (v: number): number =>
  v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;

/** Linear value (0…1) of each 8-bit encoded value. */
export const DECODE_8BIT: Float64Array = Float64Array.from({ length: 256 }, (_, v) =>
  decode(v / 255),
);

/** XYZ (Y = 100) of linear RGB in 0…1. */
export const xyzOfLinear = (r: number, g: number, b: number, space: RgbSpace = 'srgb'): XYZ =>
  multiplyColumn(TO_XYZ[space], r, g, b);

/** CIELAB (D65) of linear RGB in 0…1. */
export function labOfLinear(r: number, g: number, b: number, space: RgbSpace = 'srgb'): Lab {
  const m = TO_XYZ[space];
  return labOfXYZ(dot(m[0], r, g, b), dot(m[1], r, g, b), dot(m[2], r, g, b), RGB_WHITE);
}

/** Linear RGB of a CIELAB (D65) colour; outside 0…1 for colours outside the space's gamut. */
export function linearOfLab(
  lab: Lab,
  space: RgbSpace = 'srgb',
): readonly [r: number, g: number, b: number] {
  return multiplyColumn(FROM_XYZ[space], ...xyzOfLab(lab, RGB_WHITE));
}

/**
 * Converts linear RGB from one space to another, as for a Display P3 photograph processed in sRGB.
 * @param out 3 values, overwritten and returned
 */
export function linearBetween(
  from: RgbSpace,
  to: RgbSpace,
  r: number,
  g: number,
  b: number,
  out: Float64Array,
): Float64Array {
  const m = TO_XYZ[from];
  return multiplyColumnInto(
    FROM_XYZ[to],
    dot(m[0], r, g, b),
    dot(m[1], r, g, b),
    dot(m[2], r, g, b),
    out,
  );
}

const HALF_STEP = 0.5 / 255;

/** Whether a linear value is within 0…1, with a tolerance of half an 8-bit step. */
const inRange = (v: number): boolean => v > -decode(HALF_STEP) && v < decode(1 + HALF_STEP);

/** Whether a colour (CIELAB, D65) is in the sRGB gamut, to half an 8-bit step. */
export const inSrgb = (lab: Lab): boolean => linearOfLab(lab).every(inRange);

/** Whether a colour (CIELAB, D65) is in the Display P3 gamut, to half an 8-bit step. */
export const inP3 = (lab: Lab): boolean => linearOfLab(lab, 'display-p3').every(inRange);
