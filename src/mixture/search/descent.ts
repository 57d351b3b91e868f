import { MOST_PIGMENTS } from './compiled-shelf.ts';
import type { MixtureEvaluator } from './mixture-evaluator.ts';
import type { TargetMetric } from './target-metric.ts';

/** A pigment whose effective amount falls below this share of the strongest drops out. */
const DROP = 1e-4;
const DROP_LOG = Math.log(DROP);

/** Squared difference at which a target counts as reached (CIEDE2000 1e-4). */
const MET = 1e-8;
const ROUNDS = 40;
/** Largest change of a logarithmic amount in one step (a factor of e²). */
const STRIDE = 2;

/**
 * Stop when the expected or actual gain of a step is below this share of the squared difference.
 */
const WORTH = 1e-5;

/** Relative gain below which a descent counts as slow: above the bound it is abandoned. */
const SLOW = 0.2;

/**
 * Returned if a pigment drops out or a descent is abandoned; smaller sets are searched separately.
 */
export const ABANDONED = -1;

const Jr = new Float64Array(3 * MOST_PIGMENTS);
const saved = new Float64Array(MOST_PIGMENTS);
const y = new Float64Array(3);

/**
 * Minimises an evaluator's difference from a metric's target by Levenberg-Marquardt: three residuals
 * over logarithmic effective amounts, which keeps the amounts positive. It is Allen's tristimulus
 * matching with damping. With three residuals a step solves a 3 × 3 system for any number of
 * pigments: Jᵀ(JJᵀ + μI)⁻¹r = (JᵀJ + μI)⁻¹Jᵀr.
 *
 * @param evaluator start; overwritten with the optimum. Uses module-level buffers: not re-entrant
 * @param exact whether to use the residuals of CIEDE2000 itself, re-linearised at every step;
 *   otherwise those of {@link TargetMetric.near}, which are several times cheaper
 * @param bound squared difference above which a slow descent is abandoned
 * @returns the squared difference, with the evaluator evaluated there, or {@link ABANDONED}
 * @see E. Allen, J. Opt. Soc. Am. 56 (1966) 1256 and 64 (1974) 991 (references from memory)
 */
export function descend(
  evaluator: MixtureEvaluator,
  metric: TargetMetric,
  exact: boolean,
  bound = Number.POSITIVE_INFINITY,
): number {
  const { n, x, J } = evaluator;
  const { r } = metric;
  const slopes = exact ? metric.local : metric.linear;
  const measure = (): number =>
    exact
      ? metric.slopes(evaluator.L, evaluator.a, evaluator.b)
      : metric.near(evaluator.L, evaluator.a, evaluator.b);
  evaluator.evaluate();
  let error = measure();
  let damping = 1e-3;
  let stale = false;
  for (let round = 0; round < ROUNDS && error > MET; round++) {
    if (!stale) project(slopes, J, n);
    if (!solve(n, r, damping)) break;
    let longest = 0;
    for (let i = 0; i < n; i++) {
      const step = -(
        Jr[i]! * y[0]! +
        Jr[MOST_PIGMENTS + i]! * y[1]! +
        Jr[2 * MOST_PIGMENTS + i]! * y[2]!
      );
      saved[i] = step;
      longest = Math.max(longest, Math.abs(step));
    }
    // Stop if even the linear model predicts hardly any gain.
    if (longest <= STRIDE && left(n, r) > error * (1 - WORTH)) break;
    const shrink = longest > STRIDE ? STRIDE / longest : 1;
    for (let i = 0; i < n; i++) {
      const step = saved[i]! * shrink;
      saved[i] = x[i]!;
      x[i]! += step;
    }
    const before0 = r[0]!;
    const before1 = r[1]!;
    const before2 = r[2]!;
    evaluator.evaluate();
    const next = measure();
    if (next < error) {
      const gain = (error - next) / error;
      error = next;
      damping = Math.max(damping * 0.2, 1e-9);
      stale = false;
      if (dropped(x, n)) return ABANDONED;
      if (gain < WORTH) break;
      if (round > 1 && gain < SLOW && error > bound) return ABANDONED;
    } else {
      for (let i = 0; i < n; i++) x[i] = saved[i]!;
      r[0] = before0;
      r[1] = before1;
      r[2] = before2;
      stale = true;
      damping *= 10;
      if (damping > 1e3 || longest < 1e-7) break;
    }
  }
  if (stale) {
    evaluator.evaluate();
    measure();
  }
  return error;
}

/** Normalises the amounts to a maximum of 1; returns whether a pigment dropped out. */
function dropped(x: Float64Array, n: number): boolean {
  let top = x[0]!;
  for (let i = 1; i < n; i++) top = Math.max(top, x[i]!);
  let out = false;
  for (let i = 0; i < n; i++) {
    x[i]! -= top;
    if (x[i]! < DROP_LOG) out = true;
  }
  return out;
}

/** Jacobian of the residuals by the logarithmic amounts, into `Jr`. */
function project(slopes: Float64Array, J: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const L = J[3 * i]!;
    const a = J[3 * i + 1]!;
    const b = J[3 * i + 2]!;
    Jr[i] = slopes[0]! * L + slopes[1]! * a + slopes[2]! * b;
    Jr[MOST_PIGMENTS + i] = slopes[3]! * L + slopes[4]! * a + slopes[5]! * b;
    Jr[2 * MOST_PIGMENTS + i] = slopes[6]! * L + slopes[7]! * a + slopes[8]! * b;
  }
}

/** Sum of squared residuals after the step in `saved`, by the linear model. */
function left(n: number, r: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    let value = r[k]!;
    for (let i = 0; i < n; i++) value += Jr[k * MOST_PIGMENTS + i]! * saved[i]!;
    sum += value * value;
  }
  return sum;
}

/** Solves (JJᵀ + μI) y = r by cofactors; false if the matrix is singular. */
function solve(n: number, r: Float64Array, damping: number): boolean {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  let e = 0;
  let f = 0;
  for (let i = 0; i < n; i++) {
    const u = Jr[i]!;
    const v = Jr[MOST_PIGMENTS + i]!;
    const w = Jr[2 * MOST_PIGMENTS + i]!;
    a += u * u;
    b += u * v;
    c += u * w;
    d += v * v;
    e += v * w;
    f += w * w;
  }
  const mu = damping * (a + d + f) + 1e-30;
  a += mu;
  d += mu;
  f += mu;
  const A = d * f - e * e;
  const B = c * e - b * f;
  const C = b * e - c * d;
  const det = a * A + b * B + c * C;
  if (!(Math.abs(det) > 0)) return false;
  const D = a * f - c * c;
  const E = b * c - a * e;
  const F = a * d - b * b;
  y[0] = (A * r[0]! + B * r[1]! + C * r[2]!) / det;
  y[1] = (B * r[0]! + D * r[1]! + E * r[2]!) / det;
  y[2] = (C * r[0]! + E * r[1]! + F * r[2]!) / det;
  return true;
}
