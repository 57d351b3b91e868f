import type { Matrix } from 'ml-matrix';
import { type FitPaint, paintsOf, type Unknowns } from './fit-unknowns.ts';
import { normalEquations, type SwatchResidual } from './normal-equations.ts';
import type { Paint } from './opaque.ts';
import type { Surface } from './surface.ts';
import { predictReflectance, residualsOf, type Swatch } from './swatch-residuals.ts';

/** The observations of a fit: painted swatches and the surface through which they are seen. */
export interface Observations {
  readonly swatches: readonly Swatch[];
  readonly surface: Surface;
}

/**
 * Observations that depend on parameters which are not known exactly (surface constants, the amount
 * that a brush leaves). These settings are fitted together with the paints, each with a Gaussian
 * prior around its start.
 */
export interface ParametricObservations {
  /** Prior mean and standard deviation of each setting. */
  readonly settings: readonly { readonly start: number; readonly sd: number }[];
  /** Always the same swatches in the same order; smooth in the settings and valid for any value. */
  at(settings: Float64Array): Observations;
}

/** The state of a fit at one vector of unknowns. */
interface FitState {
  readonly observations: Observations;
  readonly paints: Paint[];
  readonly readings: Omit<SwatchResidual, 'settingSlopes'>[];
  readonly cost: number;
}

/**
 * Evaluates the fit at a vector of unknowns. The cost is the sum of squared misfits (see FitOptions
 * for `robust`) and of squared distances from the priors, all in variances.
 * @param x `unknowns.size` values, not changed
 * @throws RangeError as {@link predictReflectance}
 */
export function evaluateFit(
  experiment: ParametricObservations,
  given: readonly FitPaint[],
  unknowns: Unknowns,
  x: Float64Array,
  robust: number | undefined,
): FitState {
  const observations = experiment.at(x.slice(unknowns.settingsAt));
  const paints = paintsOf(unknowns, given, x);
  let cost = 0;
  const readings = observations.swatches.map((swatch) => {
    const expected = predictReflectance(swatch, paints, observations.surface);
    const off = residualsOf(expected, swatch);
    const own = swatch.weight ?? 1;
    if (robust === undefined) {
      cost += own * off.square;
      return { swatch, expected, misfit: off, weight: own };
    }
    cost += own * robust * Math.log1p(off.square / robust);
    return { swatch, expected, misfit: off, weight: own / (1 + off.square / robust) };
  });
  for (let i = 0; i < unknowns.settingsAt; i++) cost += x[i]! ** 2;
  experiment.settings.forEach(({ start, sd }, k) => {
    cost += ((x[unknowns.settingsAt + k]! - start) / sd) ** 2;
  });
  return { observations, paints, readings, cost };
}

/**
 * Normal equations of the fit at `x`, including the priors. `now` is {@link evaluateFit} at the same `x`.
 */
export function posteriorNormalEquations(
  experiment: ParametricObservations,
  unknowns: Unknowns,
  x: Float64Array,
  now: FitState,
): { matrix: Matrix; gradient: Float64Array } {
  const at = unknowns.settingsAt;
  const moved = experiment.settings.map(({ sd }, k) => {
    // Forward difference with a step of sd/1000: small enough to be linear, far above rounding.
    const theta = x.slice(at);
    theta[k]! += 1e-3 * sd;
    const observations = experiment.at(theta);
    return observations.swatches.map((swatch, i) => {
      const base = now.readings[i]!.expected;
      return predictReflectance(swatch, now.paints, observations.surface).map(
        (R, b) => (R - base[b]!) / (1e-3 * sd),
      );
    });
  });
  const readings = now.readings.map((reading, i) => ({
    ...reading,
    settingSlopes: moved.map((slopes) => slopes[i]!),
  }));
  const { matrix, gradient } = normalEquations(
    readings,
    now.paints,
    now.observations.surface,
    unknowns,
  );
  for (let i = 0; i < at; i++) {
    matrix.set(i, i, matrix.get(i, i) + 1);
    gradient[i]! += x[i]!;
  }
  experiment.settings.forEach(({ start, sd }, k) => {
    matrix.set(at + k, at + k, matrix.get(at + k, at + k) + 1 / sd ** 2);
    gradient[at + k]! += (x[at + k]! - start) / sd ** 2;
  });
  return { matrix, gradient };
}
