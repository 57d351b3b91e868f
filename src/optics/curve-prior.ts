import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { BANDS, STEP_NM } from '../colour/grid.ts';
import type { Paint } from './opaque.ts';

/** Prior of a curve of ln K or ln S: a Gaussian process on the wavelength grid. */
export interface CurvePrior {
  /** BANDS values of the natural logarithm. */
  readonly mean: Float64Array;
  /** BANDS × BANDS. */
  readonly covariance: Matrix;
}

/** Prior of a paint. Share one object among paints with the same prior: its basis is cached. */
export interface PaintPrior {
  readonly K: CurvePrior;
  readonly S: CurvePrior;
}

/** Standard deviations of a curve from its prior mean, in natural logarithms. */
interface PriorDeviations {
  /** Of a constant offset of the whole curve. */
  readonly level: number;
  /** Of its shape, a Matérn 3/2 process. */
  readonly shape: number;
  /** Correlation length of that process in nanometres. */
  readonly lengthNm: number;
  /** Of a shift of the whole curve along the wavelengths, in nanometres; default 0. */
  readonly shiftNm?: number;
}

/**
 * Gaussian-process prior around a mean curve. Its covariance is the sum of a common level, a smooth
 * shape, and the first-order effect of a shift along the wavelengths.
 * @param mean BANDS values of ln K or ln S; not copied
 */
export function curvePrior(mean: Float64Array, doubt: PriorDeviations): CurvePrior {
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
 * Prior of a paint without any information, relative to titanium white: K around 0.4, between 0.01
 * and 15, with edges anywhere; S around 0.25 and smoother.
 */
export const UNKNOWN_PAINT: PaintPrior = {
  K: curvePrior(even(-1), { level: 1, shape: 1.6, lengthNm: 90 }),
  S: curvePrior(even(-1.4), { level: 1, shape: 0.5, lengthNm: 150 }),
};

/** Prior of an unidentified white. Its S of 1 sets the scale of all paints mixed with it. */
export const UNKNOWN_WHITE: PaintPrior = {
  K: curvePrior(even(Math.log(0.002)), { level: 1, shape: 1, lengthNm: 90 }),
  S: curvePrior(even(0), { level: 0.02, shape: 0.1, lengthNm: 150 }),
};

/** Floor of K and S before taking logarithms, negligible as absorption or scattering. */
const LOG_FLOOR = 1e-5;
/** Natural logarithms of a curve of K or S, with values below {@link LOG_FLOOR} raised to it. */
export const logCurve = (curve: Float64Array): Float64Array =>
  curve.map((v) => Math.log(Math.max(v, LOG_FLOOR)));

/**
 * Prior of a paint whose pigment is known by name: the pigment's curves, with the differences
 * between two makers' paints of one name (strength, position of the edges, shape).
 */
export function namedPaint(named: Paint): PaintPrior {
  const doubt: PriorDeviations = { level: 0.35, shape: 0.2, lengthNm: 60, shiftNm: 6 };
  return {
    K: curvePrior(logCurve(named.K), doubt),
    S: curvePrior(logCurve(named.S), doubt),
  };
}

/**
 * A prior in its principal coordinates: ln K = mean + basis · c, with every c of variance 1.
 * Directions with less than `detail` of the total variance are dropped: the curve stays at its mean
 * along them.
 */
export interface PriorBasis {
  readonly mean: Float64Array;
  readonly size: number;
  /** Row-major, BANDS rows of `size` values. */
  readonly rows: Float64Array;
}

/**
 * Eigenbasis of a prior's covariance, largest variance first.
 * @param detail smallest share of the total variance that a direction must have
 * @throws RangeError for a prior without variance
 */
export function basisOf({ mean, covariance }: CurvePrior, detail = 1e-6): PriorBasis {
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
