import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { BANDS, STEP_NM } from '../colour/grid.ts';
import type { Paint } from './opaque.ts';

/** What is believed of a curve of ln K or ln S before it is fitted: a Gaussian process on the grid. */
export interface CurvePrior {
  /** BANDS values of the natural logarithm. */
  readonly mean: Float64Array;
  /** BANDS × BANDS. */
  readonly covariance: Matrix;
}

/** What is believed of a paint. Share one object among paints of which the same is believed. */
export interface PaintPrior {
  readonly K: CurvePrior;
  readonly S: CurvePrior;
}

/** How far a curve may lie from its mean; standard deviations of the natural logarithm. */
export interface Doubt {
  /** Of the whole curve up or down. */
  readonly level: number;
  /** Of its shape, a smooth wave (Matérn 3/2) ... */
  readonly shape: number;
  /** ... whose bands forget each other over this many nanometres. */
  readonly lengthNm: number;
  /** Of a shift of the whole curve along the wavelengths, in nanometres; 0 when left out. */
  readonly shiftNm?: number;
}

/**
 * A Gaussian-process prior around a mean curve. Its covariance is the sum of a common level, a smooth
 * shape, and the first-order effect of a shift along the wavelengths.
 * @param mean BANDS values of ln K or ln S
 */
export function curvePrior(mean: Float64Array, doubt: Doubt): CurvePrior {
  const slope = mean.map((_, band) => {
    const [low, high] = [Math.max(band - 1, 0), Math.min(band + 1, BANDS - 1)];
    return ((mean[high]! - mean[low]!) / ((high - low) * STEP_NM)) * (doubt.shiftNm ?? 0);
  });
  const covariance = Matrix.zeros(BANDS, BANDS);
  for (let i = 0; i < BANDS; i++)
    for (let j = 0; j < BANDS; j++) {
      const far = (Math.sqrt(3) * Math.abs(i - j) * STEP_NM) / doubt.lengthNm;
      const shape = doubt.shape ** 2 * (1 + far) * Math.exp(-far);
      covariance.set(i, j, doubt.level ** 2 + shape + slope[i]! * slope[j]!);
    }
  return { mean, covariance };
}

const even = (value: number): Float64Array => new Float64Array(BANDS).fill(value);

/**
 * A paint of which nothing is known, relative to titanium white: K around 0.4, anywhere from 0.01 to
 * 15 with edges of its own; S around 0.25 and smoother.
 */
export const UNKNOWN_PAINT: PaintPrior = {
  K: curvePrior(even(-1), { level: 1, shape: 1.6, lengthNm: 90 }),
  S: curvePrior(even(-1.4), { level: 1, shape: 0.5, lengthNm: 150 }),
};

/** A white of which nothing is known but that it is one: its S of 1 is the scale of all paints in it. */
export const UNKNOWN_WHITE: PaintPrior = {
  K: curvePrior(even(Math.log(0.002)), { level: 1, shape: 1, lengthNm: 90 }),
  S: curvePrior(even(0), { level: 0.02, shape: 0.1, lengthNm: 150 }),
};

/** A curve that touches 0 has no logarithm there: it is lifted to what is as good as nothing. */
const NOTHING = 1e-5;
export const logs = (curve: Float64Array): Float64Array =>
  curve.map((v) => Math.log(Math.max(v, NOTHING)));

/**
 * A paint whose pigment is named: the named curves, with the errors that two makers' paints of one
 * name show: strength, the place of the edges, and some wave.
 */
export function namedPaint(named: Paint): PaintPrior {
  const doubt: Doubt = { level: 0.35, shape: 0.2, lengthNm: 60, shiftNm: 6 };
  return {
    K: curvePrior(logs(named.K), doubt),
    S: curvePrior(logs(named.S), doubt),
  };
}

/**
 * A prior in coordinates of its own: ln K = mean + basis · c with every c of variance 1. Directions
 * that carry less than `detail` of the variance are left out: they stay at the mean.
 */
export interface Basis {
  readonly mean: Float64Array;
  readonly size: number;
  /** Row by row, BANDS rows of `size` values. */
  readonly rows: Float64Array;
}

export function basisOf({ mean, covariance }: CurvePrior, detail = 1e-6): Basis {
  const eigen = new EigenvalueDecomposition(covariance, { assumeSymmetric: true });
  const total = eigen.realEigenvalues.reduce((sum, v) => sum + v, 0);
  if (!(total > 0)) throw new RangeError('a prior needs some doubt');
  const kept = eigen.realEigenvalues
    .map((value, column) => ({ value, column }))
    .filter(({ value }) => value > detail * total)
    .sort((x, y) => y.value - x.value);
  const rows = new Float64Array(BANDS * kept.length);
  for (let band = 0; band < BANDS; band++)
    kept.forEach(({ value, column }, k) => {
      rows[band * kept.length + k] = eigen.eigenvectorMatrix.get(band, column) * Math.sqrt(value);
    });
  return { mean, size: kept.length, rows };
}
