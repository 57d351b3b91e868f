import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { deltaE00QuadraticForm } from '../colour/difference.ts';
import { BANDS } from '../colour/grid.ts';
import { labOf } from '../colour/lab.ts';
import { evaluateFit, type Observations, posteriorNormalEquations } from '../optics/fit-cost.ts';
import { type FitPaint, startOf, type Unknowns, unknownsOf } from '../optics/fit-unknowns.ts';
import type { Paint } from '../optics/opaque.ts';
import { opaqueSlopes } from '../optics/reflectance-derivatives.ts';
import { type Surface, surfaceSlope } from '../optics/surface.ts';
import { labSlopes, predictReflectance } from '../optics/swatch-residuals.ts';

/**
 * Posterior of a fit by Laplace approximation: Gaussian around the fitted paints, in the priors'
 * coordinates.
 */
export interface Posterior {
  readonly paints: readonly Paint[];
  readonly surface: Surface;
  readonly unknowns: Unknowns;
  /** Covariance of the unknowns. */
  readonly covariance: Matrix;
  /** −2 ln evidence, up to a constant of the swatches: smaller for a more probable prior. */
  readonly surprise: number;
}

/**
 * Posterior of a finished fit.
 * @param given  the paints passed to the fit
 * @param paints the fitted paints
 * @param detail the option of the fit
 */
export function posteriorOf(
  observations: Observations,
  given: readonly FitPaint[],
  paints: readonly Paint[],
  detail?: number,
): Posterior {
  const unknowns = unknownsOf(given, 0, detail);
  const from = given.map(
    (each, i): FitPaint => ('known' in each ? each : { prior: each.prior, start: paints[i]! }),
  );
  const x = startOf(unknowns, from, []);
  const experiment = { settings: [], at: () => observations };
  const now = evaluateFit(experiment, given, unknowns, x, undefined);
  if (unknowns.size === 0) {
    const covariance = Matrix.zeros(0, 0);
    return { paints, surface: observations.surface, unknowns, covariance, surprise: now.cost };
  }
  const { matrix } = posteriorNormalEquations(experiment, unknowns, x, now);
  const cholesky = new CholeskyDecomposition(matrix);
  const lower = cholesky.lowerTriangularMatrix;
  let logDeterminant = 0;
  for (let i = 0; i < lower.rows; i++) logDeterminant += 2 * Math.log(lower.get(i, i));
  let covariance: Matrix | undefined;
  return {
    paints: now.paints,
    surface: observations.surface,
    unknowns,
    // Computed on demand: it costs more than all the rest.
    get covariance() {
      covariance ??= cholesky.solve(Matrix.eye(matrix.rows));
      return covariance;
    },
    surprise: now.cost + logDeterminant,
  };
}

/**
 * Jacobian of L*, a*, b* (D65) of an opaque pile by the unknowns: 3 × `unknowns.size`.
 * @param parts by volume, one per paint of the posterior
 */
export function pileJacobian(posterior: Posterior, parts: ArrayLike<number>): Matrix {
  const { paints, surface, unknowns } = posterior;
  const R = predictReflectance({ parts }, paints, surface);
  const toLab = labSlopes(R, { lab: labOf(R), sd: 1 });
  const out = Matrix.zeros(3, unknowns.size);
  const active = paints.flatMap((_, i) => (parts[i]! > 0 ? [i] : []));
  const found = { R: 0, dlnK: 0, dlnS: 0 };
  for (let band = 0; band < BANDS; band++) {
    let K = 0;
    let S = 0;
    for (const i of active) {
      K += parts[i]! * paints[i]!.K[band]!;
      S += parts[i]! * paints[i]!.S[band]!;
    }
    opaqueSlopes(K, S, found);
    const through = surfaceSlope(found.R, surface);
    for (const i of active) {
      const at = unknowns.curveOf[i]!;
      if (at < 0) continue;
      const slopes = [
        (through * found.dlnK * parts[i]! * paints[i]!.K[band]!) / K,
        (through * found.dlnS * parts[i]! * paints[i]!.S[band]!) / S,
      ];
      slopes.forEach((slope, kind) => {
        const { basis, offset } = unknowns.curves[at + kind]!;
        for (let axis = 0; axis < 3; axis++) {
          const each = toLab[axis * BANDS + band]! * slope;
          for (let k = 0; k < basis.size; k++) {
            const sum = out.get(axis, offset + k) + each * basis.rows[band * basis.size + k]!;
            out.set(axis, offset + k, sum);
          }
        }
      });
    }
  }
  return out;
}

/** Posterior covariance (3 × 3) of a pile's predicted L*, a*, b*. */
function covarianceOfPile(posterior: Posterior, parts: ArrayLike<number>): Matrix {
  const J = pileJacobian(posterior, parts);
  // A pile depends only on the unknowns of its own paints: a few dozen of perhaps a thousand.
  const { curves, curveOf } = posterior.unknowns;
  const columns = posterior.paints.flatMap((_, i) => {
    const at = curveOf[i]!;
    if (at < 0 || !(parts[i]! > 0)) return [];
    return [curves[at]!, curves[at + 1]!].flatMap(({ basis, offset }) =>
      Array.from({ length: basis.size }, (_, k) => offset + k),
    );
  });
  if (columns.length === 0) return Matrix.zeros(3, 3);
  const own = J.subMatrixColumn(columns);
  return own.mmul(posterior.covariance.selection(columns, columns)).mmul(own.transpose());
}

/** Root mean square CIEDE2000 between a pile's predicted and actual colour under the posterior. */
export function predictionError(posterior: Posterior, parts: ArrayLike<number>): number {
  const lab = labOf(predictReflectance({ parts }, posterior.paints, posterior.surface));
  const form = Matrix.from1DArray(3, 3, [...deltaE00QuadraticForm(lab)]);
  return Math.sqrt(Math.max(0, form.mmul(covarianceOfPile(posterior, parts)).trace()));
}
