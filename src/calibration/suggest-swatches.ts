import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { deltaE00QuadraticForm } from '../colour/difference.ts';
import { labOf } from '../colour/lab.ts';
import { predictReflectance } from '../optics/swatch-residuals.ts';
import { tintingStrength } from '../optics/tinting-strength.ts';
import type { Calibration } from './calibrate-paints.ts';
import { typicalPilesOf } from './expected-error.ts';
import { pileJacobian } from './fit-posterior.ts';
import { type Part, USUAL_SD } from './painted-swatch.ts';

/** Why a swatch teaches most. */
type SuggestionReason =
  | { readonly code: 'alone'; readonly label: string }
  /** `hasTints`: other tints of the paint were observed before. */
  | { readonly code: 'tint'; readonly label: string; readonly hasTints: boolean }
  | { readonly code: 'pair'; readonly labels: readonly [string, string] };

/** A recommended swatch to paint. */
export interface Suggestion {
  /** In whole parts by volume. */
  readonly parts: readonly Part[];
  /** Expected root mean square CIEDE2000 of usual piles, before and after observing this swatch. */
  readonly before: number;
  readonly after: number;
  readonly reason: SuggestionReason;
}

interface SuggestOptions {
  /** Maximum number of suggestions; default 3. */
  readonly count?: number;
  /** Only swatches that contain one of these pigments. */
  readonly pigments?: readonly string[];
  /** Standard deviation of each of L*, a*, b* of the observation; default that of a photograph. */
  readonly sd?: number;
}

/**
 * Optimal experimental design: of all masstones, tints and pairs at equal strength, the swatches
 * that most reduce the expected error of usual piles. Observing a swatch with Jacobian J reduces
 * the posterior covariance Σ by ΣJᵀ(JΣJᵀ + sd²)⁻¹JΣ.
 *
 * @returns best first; greedy: each one assumes that those before it were painted
 */
export function suggestSwatches(
  calibration: Calibration,
  options: SuggestOptions = {},
): Suggestion[] {
  const { posterior, white, paints } = calibration;
  const { count = 3, sd = USUAL_SD.photographed } = options;
  if (posterior.unknowns.size === 0) return [];
  const whiteAt = paints.findIndex(({ pigment }) => pigment === white);
  // Rows are derivatives of the components of ΔE of the usual piles.
  const wanted = paints.flatMap((_, i) => typicalPilesOf(posterior, i, whiteAt));
  const targets = stacked(
    wanted.map((parts) => {
      const form = Matrix.from1DArray(3, 3, [
        ...deltaE00QuadraticForm(
          labOf(predictReflectance({ parts }, posterior.paints, posterior.surface)),
        ),
      ]);
      const root = new CholeskyDecomposition(form).lowerTriangularMatrix.transpose();
      return root.mmul(pileJacobian(posterior, parts));
    }),
  );
  const candidates = candidatesOf(calibration, whiteAt, options.pigments).map((parts) => ({
    parts,
    slopes: pileJacobian(posterior, parts),
  }));
  let covariance = posterior.covariance;
  const out: Suggestion[] = [];
  while (out.length < count && candidates.length > 0) {
    const spread = targets.mmul(covariance);
    const total = tracedProduct(spread, targets);
    let best = { at: -1, gain: 0 };
    candidates.forEach(({ slopes }, at) => {
      const across = spread.mmul(slopes.transpose());
      const own = noisy(slopes.mmul(covariance).mmul(slopes.transpose()), sd);
      const gain = tracedProduct(across.mmul(own), across);
      if (gain > best.gain) best = { at, gain };
    });
    if (best.at < 0) break;
    const [chosen] = candidates.splice(best.at, 1);
    const before = Math.sqrt(total / wanted.length);
    const after = Math.sqrt(Math.max(0, total - best.gain) / wanted.length);
    out.push({
      parts: paints.flatMap(({ pigment }, i) =>
        chosen!.parts[i]! > 0 ? [{ pigment, parts: chosen!.parts[i]! }] : [],
      ),
      before,
      after,
      reason: reasonFor(calibration, chosen!.parts, whiteAt),
    });
    const J = chosen!.slopes;
    const reach = covariance.mmul(J.transpose());
    const taken = reach.mmul(noisy(J.mmul(reach), sd)).mmul(reach.transpose());
    covariance = Matrix.sub(covariance, taken);
  }
  return out;
}

/** (M + sd²)⁻¹ of a 3 × 3 covariance. */
function noisy(M: Matrix, sd: number): Matrix {
  // Rounding makes M slightly asymmetric, which the decomposition does not accept.
  const sum = Matrix.add(M, M.transpose()).mul(0.5);
  for (let i = 0; i < 3; i++) sum.set(i, i, sum.get(i, i) + sd * sd);
  return new CholeskyDecomposition(sum).solve(Matrix.eye(3));
}

function tracedProduct(A: Matrix, B: Matrix): number {
  let sum = 0;
  for (let i = 0; i < A.rows; i++)
    for (let j = 0; j < A.columns; j++) sum += A.get(i, j) * B.get(i, j);
  return sum;
}

function stacked(blocks: readonly Matrix[]): Matrix {
  return new Matrix(blocks.flatMap((block) => block.to2DArray()));
}

/** Masstones, tints of 1 : 4, and pairs at about equal strength in whole parts. */
function candidatesOf(
  { paints, posterior }: Calibration,
  white: number,
  pigments: readonly string[] | undefined,
): Float64Array[] {
  const wantedAt = (i: number) => !pigments || pigments.includes(paints[i]!.pigment);
  const made = (...amounts: readonly (readonly [number, number])[]) => {
    const parts = new Float64Array(paints.length);
    for (const [i, amount] of amounts) parts[i] = amount;
    return parts;
  };
  const out: Float64Array[] = [];
  for (let i = 0; i < paints.length; i++) {
    if (i === white) continue;
    if (wantedAt(i)) out.push(made([i, 1]), made([i, 1], [white, 4]));
    for (let j = i + 1; j < paints.length; j++) {
      if (j === white || !(wantedAt(i) || wantedAt(j))) continue;
      const ratio = tintingStrength(posterior.paints[i]!) / tintingStrength(posterior.paints[j]!);
      const whole = Math.min(16, Math.max(1, Math.round(Math.max(ratio, 1 / ratio))));
      out.push(ratio >= 1 ? made([i, 1], [j, whole]) : made([i, whole], [j, 1]));
    }
  }
  return out;
}

function reasonFor(
  { paints, swatches }: Calibration,
  parts: Float64Array,
  white: number,
): Suggestion['reason'] {
  const names = paints.flatMap(({ label }, i) => (parts[i]! > 0 ? [label] : []));
  if (names.length === 1) return { code: 'alone', label: names[0]! };
  if (!(parts[white]! > 0)) return { code: 'pair', labels: [names[0]!, names[1]!] };
  const other = paints.find(({ pigment }, i) => i !== white && parts[i]! > 0 && pigment)!;
  const tints = swatches.filter(({ painted }) =>
    painted.parts.some(({ pigment }) => pigment === other.pigment),
  ).length;
  return { code: 'tint', label: other.label, hasTints: tints > 1 };
}
