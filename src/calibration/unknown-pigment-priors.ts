import { BANDS } from '../colour/grid.ts';
import { curvePrior, type PaintPrior, UNKNOWN_PAINT } from '../optics/curve-prior.ts';

/**
 * Candidate priors of a paint whose pigment is unknown. The smoothness of its scattering depends on
 * the medium and the measurement, so the fit tries each candidate and keeps the one with the
 * largest evidence (by Laplace approximation).
 * @see D. J. C. MacKay, Neural Computation 4 (1992) 415-447, for choosing priors by evidence (from
 *   memory)
 */
export const UNKNOWN_PIGMENT_PRIORS: readonly PaintPrior[] = [
  UNKNOWN_PAINT,
  bent(0.3, 250),
  bent(0.8, 100),
];

function bent(shape: number, lengthNm: number): PaintPrior {
  const mean = new Float64Array(BANDS).fill(-1.4);
  return { K: UNKNOWN_PAINT.K, S: curvePrior(mean, { level: 1, shape, lengthNm }) };
}
