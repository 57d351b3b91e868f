import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Reflectance } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { type Experiment, equations, look, type Trial } from './cost.ts';
import type { Paint } from './opaque.ts';
import { deviations } from './posterior.ts';
import { checkSurface, type Surface } from './surface.ts';
import { checkSwatch } from './swatch.ts';
import { changeOf, type FitPaint, startOf, type Unknowns, unknownsOf } from './unknowns.ts';

export interface FitOptions {
  /**
   * Forgive swatches that fit nowhere: a squared misfit of q (in variances, over the whole swatch)
   * costs c ln(1 + q/c) with this c (Cauchy's distribution). Left out: q itself.
   */
  readonly robust?: number;
  /** Also say how sure the curves are; costs about as much again as one round of the fit. */
  readonly posterior?: boolean;
  /**
   * Directions of a curve with less than this share of its prior's variance are left at the prior's
   * mean: with many paints fewer unknowns make a much faster fit. 1e-6 when left out.
   */
  readonly detail?: number;
  /** At most so many rounds; 60 when left out. */
  readonly rounds?: number;
  /** Stop when a round lowers the cost by less than this share; 1e-6 when left out. */
  readonly tolerance?: number;
  /** Called after each round; `false` stops the fit where it is. */
  readonly proceed?: (round: number, cost: number) => boolean;
}

export interface FittedSwatch {
  /** Measured reflectance that the fitted paints predict. */
  readonly R: Reflectance;
  /** Its colour under D65. */
  readonly lab: Lab;
  /** Squared misfit in variances, over all that was seen of the swatch. */
  readonly square: number;
  /** What the robust cost left of it: 1 is all. */
  readonly trust: number;
}

export interface Fit {
  /** In the order given; known ones as given. */
  readonly paints: readonly Paint[];
  readonly settings: Float64Array;
  readonly surface: Surface;
  /** In the order given. */
  readonly swatches: readonly FittedSwatch[];
  /** Standard deviation of ln K and ln S per band, null for a known paint; only when asked for. */
  readonly sd?: readonly (null | { readonly K: Float64Array; readonly S: Float64Array })[];
  readonly rounds: number;
  /** False when the fit was stopped or ran out of rounds: `paints` are the best so far. */
  readonly converged: boolean;
}

/**
 * K and S of one or many paints from any swatches of them and of their mixtures, all bands and all
 * swatches at once: the most probable ln K and ln S under smooth priors (maximum a posteriori, by
 * Levenberg and Marquardt's damped Gauss-Newton steps in the priors' own coordinates). A swatch is
 * opaque or a film over a ground, seen through the surface as a colour, a spectrum or both.
 *
 * Deterministic. Where only ratios of K and S show (opaque swatches, no known paint) the common scale
 * stays at the priors'.
 *
 * @param trial  swatches whose `parts` follow the order of `paints`
 * @throws RangeError for a swatch, surface or prior that is none
 */
export function fitPaints(
  trial: Trial,
  paints: readonly FitPaint[],
  options: FitOptions = {},
): Fit {
  return fitExperiment({ settings: [], at: () => trial }, paints, options);
}

/** {@link fitPaints}, with the settings of the experiment as further unknowns. */
export function fitExperiment(
  experiment: Experiment,
  paints: readonly FitPaint[],
  options: FitOptions = {},
): Fit {
  const unknowns = unknownsOf(paints, experiment.settings.length, options.detail);
  const starts = experiment.settings.map(({ start }) => start);
  let x = startOf(unknowns, paints, starts);
  const first = experiment.at(x.slice(unknowns.settingsAt));
  checkSurface(first.surface);
  first.swatches.forEach((swatch, i) => {
    checkSwatch(swatch, paints.length, i);
  });

  const evaluate = (at: Float64Array) => look(experiment, paints, unknowns, at, options.robust);
  let now = evaluate(x);
  if (!Number.isFinite(now.cost)) throw new RangeError('the start of a fit has no cost');
  let damping = 1e-3;
  let round = 0;
  let converged = unknowns.size === 0;
  const most = options.rounds ?? 60;
  while (!converged && round < most) {
    round++;
    const { matrix, gradient } = equations(experiment, unknowns, x, now);
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
    // No step downwards at all: rounding is all that is left. A small gain says so only where the
    // damping did not make the step small.
    const small = before - now.cost < (options.tolerance ?? 1e-6) * before;
    converged = damping > 1e8 || (small && damping < 0.1);
    if (!converged && options.proceed && !options.proceed(round, now.cost)) break;
  }

  const { swatches, surface } = now.trial;
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
      ? { sd: deviations(equations(experiment, unknowns, x, now).matrix, paints, unknowns) }
      : {}),
    rounds: round,
    converged,
  };
}

/** No curve moves by more than this in one step (a factor of 20), where the slopes still mean something. */
const FARTHEST = 3;

/** Null where rounding leaves no positive definite matrix: more damping mends that. */
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
  return most > FARTHEST ? step.map((v) => (v * FARTHEST) / most) : step;
}
