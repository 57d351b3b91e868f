import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { BANDS } from '../colour/grid.ts';
import type { FitPaint, Unknowns } from './fit-unknowns.ts';

/**
 * Standard deviation of ln K and ln S of each fitted paint, per band, from the curvature of the
 * cost (Laplace approximation); null for known paints.
 * @param matrix normal equations at the fit, with the priors
 */
export function curveDeviations(
  matrix: Matrix,
  given: readonly FitPaint[],
  { curves, curveOf }: Unknowns,
) {
  const cholesky = new CholeskyDecomposition(matrix);
  const sd = curves.map(({ basis, offset }) => {
    const directions = Matrix.zeros(matrix.rows, BANDS);
    for (let band = 0; band < BANDS; band++)
      for (let k = 0; k < basis.size; k++)
        directions.set(offset + k, band, basis.rows[band * basis.size + k]!);
    const solved = cholesky.solve(directions);
    return Float64Array.from({ length: BANDS }, (_, band) => {
      let variance = 0;
      for (let k = 0; k < basis.size; k++)
        variance += directions.get(offset + k, band) * solved.get(offset + k, band);
      return Math.sqrt(variance);
    });
  });
  return given.map((_, i) => {
    const at = curveOf[i]!;
    return at < 0 ? null : { K: sd[at]!, S: sd[at + 1]! };
  });
}
