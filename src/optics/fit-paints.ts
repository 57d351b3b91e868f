import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Reflectance } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { curveDeviations } from './curve-deviation.ts';
import {
  evaluateFit,
  type Observations,
  type ParametricObservations,
  posteriorNormalEquations,
} from './fit-cost.ts';
import { changeOf, type FitPaint, startOf, type Unknowns, unknownsOf } from './fit-unknowns.ts';
import type { Paint } from './opaque.ts';
import { checkSurface, type Surface } from './surface.ts';
import { checkSwatch } from './swatch-residuals.ts';

interface FitOptions {
  /**
   * Makes the cost robust against outlier swatches: a squared misfit q (in variances, summed over
   * the swatch) costs c ln(1 + q/c) with this c (Cauchy loss). If left out, it costs q.
   */
  readonly robust?: number;
  /**
   * Also compute the standard deviations of the curves; takes about as long as one round of the
   * fit.
   */
  readonly posterior?: boolean;
  /**
   * Principal directions of a curve with less than this share of its prior's variance stay at the
   * prior mean. With many paints, fewer unknowns make the fit much faster. Default 1e-6.
   */
  readonly detail?: number;
  /** Maximum number of rounds; default 60. */
  readonly rounds?: number;
  /** The fit has converged when a round lowers the cost by less than this share; default 1e-6. */
  readonly tolerance?: number;
  /** Called after each round; returning `false` stops the fit at its current state. */
  readonly proceed?: (round: number, cost: number) => boolean;
}

interface FittedSwatch {
  /** Predicted reflectance, seen through the surface. */
  readonly R: Reflectance;
  /** Its colour under D65. */
  readonly lab: Lab;
  /** Squared misfit in variances, summed over everything observed of the swatch. */
  readonly square: number;
  /** Weight that the robust cost leaves it, 0…1; 1 is full weight. */
  readonly trust: number;
}

export interface PaintFit {
  /** In the order of the input; known paints unchanged. */
  readonly paints: readonly Paint[];
  readonly settings: Float64Array;
  readonly surface: Surface;
  /** In the order of the input. */
  readonly swatches: readonly FittedSwatch[];
  /**
   * Standard deviation of ln K and ln S per band, null for a known paint; only with `posterior`.
   */
  readonly sd?: readonly (null | { readonly K: Float64Array; readonly S: Float64Array })[];
  readonly rounds: number;
  /** False when the fit was stopped or ran out of rounds: `paints` are the best so far. */
  readonly converged: boolean;
}

/**
 * Fits K and S of one or more paints to swatches of them and of their mixtures, all bands and all
 * swatches at once. The result is the maximum a posteriori estimate of ln K and ln S under smooth
 * priors, by Levenberg-Marquardt steps in the priors' coordinates. A swatch is opaque or a film
 * over a ground, observed through the surface as a colour, a spectrum or both.
 *
 * Deterministic. If only ratios of K and S are observable (opaque swatches, no known paint), the
 * common scale stays that of the priors.
 *
 * @param observations  swatches whose `parts` follow the order of `paints`; nothing is changed
 * @throws RangeError for an invalid swatch, surface or prior
 */
export function fitPaints(
  observations: Observations,
  paints: readonly FitPaint[],
  options: FitOptions = {},
): PaintFit {
  return fitExperiment({ settings: [], at: () => observations }, paints, options);
}

/** {@link fitPaints} with the settings of the experiment as additional unknowns. */
export function fitExperiment(
  experiment: ParametricObservations,
  paints: readonly FitPaint[],
  options: FitOptions = {},
): PaintFit {
  const unknowns = unknownsOf(paints, experiment.settings.length, options.detail);
  const starts = experiment.settings.map(({ start }) => start);
  let x = startOf(unknowns, paints, starts);
  const first = experiment.at(x.slice(unknowns.settingsAt));
  checkSurface(first.surface);
  first.swatches.forEach((swatch, i) => {
    checkSwatch(swatch, paints.length, i);
  });

  const evaluate = (at: Float64Array) =>
    evaluateFit(experiment, paints, unknowns, at, options.robust);
  let now = evaluate(x);
  if (!Number.isFinite(now.cost)) throw new RangeError('the start of a fit has no cost');
  let damping = 1e-3;
  let round = 0;
  let converged = unknowns.size === 0;
  const most = options.rounds ?? 60;
  while (!converged && round < most) {
    round++;
    const { matrix, gradient } = posteriorNormalEquations(experiment, unknowns, x, now);
    const before = now.cost;
    for (;;) {
      const step = dampedStep(matrix, gradient, damping, unknowns);
      const tried = step && x.map((v, i) => v - step[i]!);
      const next = tried && evaluate(tried);
      if (next && next.cost < now.cost) {
        x = tried;
        now = next;
        damping = Math.max(damping / 10, 1e-9);
        break;
      }
      damping *= 5;
      if (damping > 1e8) break;
    }
    // If no step lowers the cost, only rounding is left. A small gain means convergence only if
    // strong damping did not cause it.
    const small = before - now.cost < (options.tolerance ?? 1e-6) * before;
    converged = damping > 1e8 || (small && damping < 0.1);
    if (!converged && options.proceed && !options.proceed(round, now.cost)) break;
  }

  const { swatches, surface } = now.observations;
  return {
    paints: now.paints,
    settings: x.slice(unknowns.settingsAt),
    surface,
    swatches: now.readings.map(({ expected, misfit, weight }, i) => ({
      R: expected,
      lab: labOf(expected),
      square: misfit.square,
      trust: weight / (swatches[i]!.weight ?? 1),
    })),
    ...(options.posterior
      ? {
          sd: curveDeviations(
            posteriorNormalEquations(experiment, unknowns, x, now).matrix,
            paints,
            unknowns,
          ),
        }
      : {}),
    rounds: round,
    converged,
  };
}

/**
 * Largest change of ln K or ln S in one step (a factor of 20), so that linearisation stays usable.
 */
const LARGEST_LOG_STEP = 3;

/**
 * One Levenberg-Marquardt step, shortened to {@link LARGEST_LOG_STEP}; null if rounding makes the matrix
 * not positive definite, which more damping fixes.
 */
function dampedStep(
  matrix: Matrix,
  gradient: Float64Array,
  damping: number,
  { curves }: Unknowns,
): Float64Array | null {
  const damped = matrix.clone();
  for (let i = 0; i < damped.rows; i++) damped.set(i, i, damped.get(i, i) * (1 + damping));
  const cholesky = new CholeskyDecomposition(damped);
  if (!cholesky.isPositiveDefinite()) return null;
  const solved = cholesky.solve(Matrix.columnVector(gradient));
  const step = Float64Array.from(solved.to1DArray());
  let most = 0;
  for (const curve of curves)
    for (const moved of changeOf(curve, step)) most = Math.max(most, Math.abs(moved));
  return most > LARGEST_LOG_STEP ? step.map((v) => (v * LARGEST_LOG_STEP) / most) : step;
}
