import { BANDS } from '../../colour/grid.ts';
import { curvePrior, type PaintPrior, UNKNOWN_PAINT } from '../../optics/prior.ts';

/**
 * What may be believed of a paint whose pigment is not named. How much its scattering bends from band to
 * band differs from medium to medium (and with how it was measured), so it is not settled here: the fit
 * tries each and keeps the one under which the painter's own swatches are most probable (the evidence,
 * by Laplace's approximation).
 * @see D. J. C. MacKay, Neural Computation 4 (1992) 415-447, for choosing priors so (from memory)
 */
export const UNNAMED: readonly PaintPrior[] = [UNKNOWN_PAINT, bent(0.3, 250), bent(0.8, 100)];

function bent(shape: number, lengthNm: number): PaintPrior {
  const mean = new Float64Array(BANDS).fill(-1.4);
  return { K: UNKNOWN_PAINT.K, S: curvePrior(mean, { level: 1, shape, lengthNm }) };
}
