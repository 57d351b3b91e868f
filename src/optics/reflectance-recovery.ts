import { LuDecomposition, Matrix } from 'ml-matrix';
import { bisect } from '../bisection.ts';
import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';
import { type Lab, labOf, xyzOfLab } from '../colour/lab.ts';
import { D65, type Light, type XYZ } from '../colour/observer.ts';
import { addSurface, checkSurface, type Surface, surfaceSlope, throughSurface } from './surface.ts';

/** A reflectance reconstructed from a colour. */
interface RecoveredReflectance {
  /** Internal reflectance (under the surface), strictly between 0 and 1. */
  readonly R: Reflectance;
  /** Colour of `R` seen through the surface. */
  readonly lab: Lab;
  /**
   * Whether `lab` is the requested colour. If not, no reflectance within 0…1 has it under this
   * surface: lightness was clamped to the range from the bare surface to white, then chroma was
   * reduced at constant lightness and CIELAB hue, as little as needed.
   */
  readonly exact: boolean;
}

/** Flat reflectances stay this far from 0 and 1, where the slope of tanh vanishes. */
const MARGIN = 1e-4;

/**
 * The smoothest reflectance with a given colour, by "least hyperbolic tangent slope squared": with
 * R = (tanh z + 1) ÷ 2 it minimises Σ (zᵢ₊₁ − zᵢ)², subject to the colour. Smoothness applies to
 * the internal reflectance, the colour to the reflectance seen through the surface. A neutral
 * colour gives the same R in every band.
 *
 * Many spectra have this colour: compare colours computed from the result, never spectra.
 *
 * @param lab   CIELAB under `light`, relative to its white; finite
 * @throws RangeError for a colour that is not finite or an invalid surface
 * @see S. A. Burns, Color Res. Appl. 45 (2020) 8-21
 */
export function recoverReflectance(
  lab: Lab,
  surface: Surface,
  light: Light = D65,
): RecoveredReflectance {
  checkSurface(surface);
  if (!lab.every(Number.isFinite)) throw new RangeError(`a colour of ${lab.join(', ')}`);
  const darkest = labOf(flat(MARGIN, surface), light)[0];
  const lightest = labOf(flat(1 - MARGIN, surface), light)[0];
  const L = Math.min(Math.max(lab[0], darkest), lightest);
  const at = (chroma: number): Lab => [L, chroma * lab[1], chroma * lab[2]];

  // Continuation in chroma from the neutral of the same lightness, which is known: in one step if
  // Newton's method converges, else with halved steps.
  let z: Float64Array = neutral(L, surface, light);
  let reached = 0;
  let step = 1;
  while (reached < 1 && step > 1e-3) {
    const next = Math.min(1, reached + step);
    const found = newton(z, xyzOfLab(at(next), light.white), surface, light);
    if (found === null) {
      step /= 2;
    } else {
      z = found;
      reached = next;
    }
  }
  const R = spectrum<'R'>(z.map((v) => (Math.tanh(v) + 1) / 2));
  const seen = addSurface(spectrum<'R'>(R), surface);
  return { R, lab: labOf(seen, light), exact: reached === 1 && L === lab[0] };
}

function flat(R: number, surface: Surface): Reflectance {
  return addSurface(spectrum<'R'>(new Float64Array(BANDS).fill(R)), surface);
}

/** z of the flat internal reflectance that has lightness L when seen through the surface. */
function neutral(L: number, surface: Surface, light: Light): Float64Array {
  const Y = xyzOfLab([L, 0, 0], light.white)[1] / light.white[1];
  // Bisection: works for either specular geometry and stays within 0…1.
  const [low] = bisect(0, 1, (R) => throughSurface(R, surface) < Y, 60);
  const R = Math.min(Math.max(low, MARGIN), 1 - MARGIN);
  return new Float64Array(BANDS).fill(Math.atanh(2 * R - 1));
}

const SIZE = BANDS + 3;

/** Newton's method on the conditions of the constrained minimum; null if it does not converge. */
function newton(start: Float64Array, target: XYZ, surface: Surface, light: Light) {
  const weights = [light.X, light.Y, light.Z];
  const goal = target.map((v) => v / 100);
  let z = Float64Array.from(start);
  let multipliers = new Float64Array(3);
  let now = conditions(z, multipliers, goal, weights, surface);
  for (let iteration = 0; iteration < 60; iteration++) {
    if (now.size < 1e-11) return z;
    const lu = new LuDecomposition(now.jacobian);
    if (lu.isSingular()) return null;
    const change = lu.solve(Matrix.columnVector(now.residual)).to1DArray();
    let share = 1;
    for (;;) {
      const tried = z.map((v, band) => v - share * change[band]!);
      const pulls = multipliers.map((v, i) => v - share * change[BANDS + i]!);
      const next = conditions(tried, pulls, goal, weights, surface);
      if (next.size < now.size) {
        z = tried;
        multipliers = pulls;
        now = next;
        break;
      }
      // Once the colour is right to twelve digits, only rounding stops the descent.
      if (share < 0.02) return now.colourError < 1e-12 && now.size < 1e-8 ? z : null;
      share /= 2;
    }
  }
  return null;
}

/**
 * Residual and Jacobian of [Dz + f′(z)·(Wᵀλ); Wf(z) − XYZ], with f(z) the reflectance seen through
 * the surface, W the tristimulus weights and λ the multipliers.
 */
function conditions(
  z: Float64Array,
  multipliers: Float64Array,
  goal: readonly number[],
  weights: readonly Float64Array[],
  surface: Surface,
) {
  const residual = new Float64Array(SIZE);
  const jacobian = Matrix.zeros(SIZE, SIZE);
  for (let i = 0; i < 3; i++) residual[BANDS + i] = -goal[i]!;
  for (let band = 0; band < BANDS; band++) {
    const R = (Math.tanh(z[band]!) + 1) / 2;
    const dR = 2 * R * (1 - R);
    const slope = surfaceSlope(R, surface);
    const first = slope * dR;
    const second =
      slope * 2 * dR * (1 - 2 * R) + ((2 * surface.k2 * slope) / (1 - surface.k2 * R)) * dR * dR;
    const seen = throughSurface(R, surface);

    let pull = 0;
    for (let i = 0; i < 3; i++) {
      const weight = weights[i]![band]! / 100;
      pull += weight * multipliers[i]!;
      residual[BANDS + i]! += weight * seen;
      jacobian.set(band, BANDS + i, weight * first);
      jacobian.set(BANDS + i, band, weight * first);
    }
    // D, the Hessian of Σ (zᵢ₊₁ − zᵢ)²: diagonal 4, at both ends 2, off-diagonal −2.
    let bend = 0;
    let diagonal = 0;
    for (const beside of [band - 1, band + 1]) {
      if (beside < 0 || beside >= BANDS) continue;
      bend += 2 * (z[band]! - z[beside]!);
      diagonal += 2;
      jacobian.set(band, beside, -2);
    }
    residual[band] = bend + first * pull;
    jacobian.set(band, band, diagonal + second * pull);
  }
  let size = 0;
  for (const value of residual) size += value * value;
  const colourError = Math.hypot(residual[BANDS]!, residual[BANDS + 1]!, residual[BANDS + 2]!);
  return { residual, jacobian, size: Math.sqrt(size), colourError };
}
