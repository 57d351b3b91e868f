import { diagonal, dot, inverse, type Matrix, product } from './matrix.ts';
import type { XYZ } from './observer.ts';
import { FROM_XYZ, type RgbSpace, TO_XYZ } from './rgb.ts';

/**
 * Bradford for photographs and Munsell work (as in ICC profiles); CAT16 is the modern alternative.
 */
type AdaptationKind = 'bradford' | 'cat16';

/**
 * XYZ to sharpened cone signals.
 * Bradford: K. M. Lam, thesis, University of Bradford 1985, as used by ICC.1 annex E.
 * CAT16: C. Li et al., Color Res. Appl. 42 (2017) 703-718; CIE 248:2022.
 */
export const ADAPTATION_CONES: Record<AdaptationKind, Matrix> = {
  bradford: [
    [0.8951, 0.2664, -0.1614],
    [-0.7502, 1.7135, 0.0367],
    [0.0389, -0.0685, 1.0296],
  ],
  cat16: [
    [0.401288, 0.650173, -0.051461],
    [-0.250268, 1.204414, 0.045854],
    [-0.002079, 0.048952, 0.953127],
  ],
};

/**
 * Chromatic adaptation matrix (XYZ to XYZ) with complete adaptation: it maps the white `from` to
 * the white `to`. Both whites are first scaled to Y = 100, so that only chromaticity adapts and a
 * grey keeps its luminance.
 *
 * @param from, to whites, on any scale
 * @throws RangeError when a white's Y is not above 0
 */
export function adaptationMatrix(from: XYZ, to: XYZ, kind: AdaptationKind = 'bradford'): Matrix {
  const M = ADAPTATION_CONES[kind];
  const was = signals(M, atY100(from));
  const is = signals(M, atY100(to));
  const gains = diagonal(is[0] / was[0], is[1] / was[1], is[2] / was[2]);
  return product(inverse(M), product(gains, M));
}

/**
 * Two-step adaptation matrix for incomplete adaptation: first from the white `from` to a baseline
 * white with the degree of adaptation `fromD`, then to the white `to` with the degree `toD`. The
 * luminance of each white cancels out.
 *
 * @param fromD, toD degrees of adaptation 0…1; with both 1 this is {@link adaptationMatrix}
 * @see Q. Zhai, M. R. Luo, Optics Express 26 (2018) 7724-7737
 */
export function twoStepAdaptationMatrix(
  from: XYZ,
  fromD: number,
  to: XYZ,
  toD: number,
  kind: AdaptationKind = 'cat16',
  baseline: XYZ = [100, 100, 100],
): Matrix {
  const M = ADAPTATION_CONES[kind];
  const base = signals(M, baseline);
  const gain = (white: XYZ, D: number) =>
    signals(M, white).map((s, i) => D * (white[1] / baseline[1]) * (base[i]! / s) + 1 - D);
  const first = gain(from, fromD);
  const second = gain(to, toD);
  const [r, g, b] = first.map((s, i) => s / second[i]!) as [number, number, number];
  return product(inverse(M), product(diagonal(r, g, b), M));
}

/**
 * {@link adaptationMatrix} for linear RGB (0…1): one matrix from RGB to RGB of the same space.
 * White balance from a neutral spot: `linearAdaptation(xyzOfLinear(r, g, b), RGB_WHITE)` maps the
 * spot's colour to a grey of the same luminance.
 * @throws RangeError as {@link adaptationMatrix}
 */
export function rgbAdaptationMatrix(
  from: XYZ,
  to: XYZ,
  space: RgbSpace = 'srgb',
  kind: AdaptationKind = 'bradford',
): Matrix {
  return product(FROM_XYZ[space], product(adaptationMatrix(from, to, kind), TO_XYZ[space]));
}

const signals = (M: Matrix, [X, Y, Z]: XYZ): XYZ => [
  dot(M[0], X, Y, Z),
  dot(M[1], X, Y, Z),
  dot(M[2], X, Y, Z),
];

function atY100([X, Y, Z]: XYZ): XYZ {
  if (!(Y > 0)) throw new RangeError('a white has some light: its Y is above 0');
  return [(100 * X) / Y, 100, (100 * Z) / Y];
}
