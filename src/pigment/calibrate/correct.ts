import { Matrix, solve } from 'ml-matrix';
import { deltaE00 } from '../../colour/difference.ts';
import { type Lab, labOfXYZ, xyzOfLab } from '../../colour/lab.ts';
import { D65, type XYZ } from '../../colour/observer.ts';
import type { Rgb } from './sample.ts';

/** How linear RGB becomes XYZ: a matrix, or the same for root polynomials of degree 2. */
export type CorrectionKind = 'linear' | 'root-polynomial';

/** A correction of colours, fitted to patches of known colour. */
export interface Correction {
  readonly kind: CorrectionKind;
  /** CIELAB (D65) of balanced linear RGB. */
  labOf(rgb: Rgb): Lab;
}

/** How well a correction does on its own patches (CIEDE2000). */
export interface Residual {
  readonly mean: number;
  readonly max: number;
  /** Each patch corrected by a fit to the others: what to expect of colours that are not on the chart. */
  readonly heldOut: number;
}

/**
 * R G B √(RG) √(GB) √(RB): like R, G and B they double with the exposure, so that a correction fitted
 * in one light holds in a weaker one.
 * @see G. Finlayson, M. Mackiewicz, A. Hurlbert, IEEE Trans. Image Process. 24 (2015) 1460-1470
 */
export function rootTerms([r, g, b]: Rgb): number[] {
  const root = (v: number) => Math.sqrt(Math.max(v, 0));
  return [r, g, b, root(r * g), root(g * b), root(r * b)];
}

const termsOf = (kind: CorrectionKind, rgb: Rgb): number[] =>
  kind === 'linear' ? [...rgb] : rootTerms(rgb);

/** Slope of the cube root of CIELAB against X ÷ Xw, flat near black: dark patches do not rule a fit. */
const lightnessSlope = (t: number): number => 1 / (3 * Math.cbrt(Math.max(t, 0.02)) ** 2);

/**
 * The correction that brings patches nearest to their known colours: least squares for X, Y and Z,
 * every patch weighed as CIELAB sees it.
 *
 * @param rgbs balanced linear RGB, at least as many as the correction has terms
 * @param labs known colours under D65, in the same order
 * @throws RangeError when there are too few patches
 */
export function fitCorrection(
  rgbs: readonly Rgb[],
  labs: readonly Lab[],
  kind: CorrectionKind,
): Correction {
  const rows = rgbs.map((rgb) => termsOf(kind, rgb));
  if (rows.length !== labs.length || rows.length < (rows[0]?.length ?? 3))
    throw new RangeError(
      `${rows.length} patches, ${labs.length} colours: too few for a ${kind} fit`,
    );
  const targets = labs.map((lab) => xyzOfLab(lab, D65.white));
  const columns = [0, 1, 2].map((axis) => {
    const weights = targets.map((xyz) => lightnessSlope(xyz[axis]! / D65.white[axis]!));
    const A = new Matrix(rows.map((row, i) => row.map((v) => v * weights[i]!)));
    const b = Matrix.columnVector(targets.map((xyz, i) => xyz[axis]! * weights[i]!));
    return solve(A, b, true).to1DArray();
  });
  return {
    kind,
    labOf: (rgb) => {
      const row = termsOf(kind, rgb);
      const [X, Y, Z] = columns.map((column) =>
        column.reduce((sum, v, i) => sum + v * row[i]!, 0),
      ) as unknown as XYZ;
      return labOfXYZ(X, Y, Z, D65.white);
    },
  };
}

/** How well a kind of correction does on patches, on its own and held out one by one. */
export function residualOf(
  rgbs: readonly Rgb[],
  labs: readonly Lab[],
  kind: CorrectionKind,
): Residual {
  const whole = fitCorrection(rgbs, labs, kind);
  const off = rgbs.map((rgb, i) => deltaE00(whole.labOf(rgb), labs[i]!));
  const held = rgbs.map((rgb, i) => {
    const others = (_: unknown, j: number) => j !== i;
    const fit = fitCorrection(rgbs.filter(others), labs.filter(others), kind);
    return deltaE00(fit.labOf(rgb), labs[i]!);
  });
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  return { mean: mean(off), max: Math.max(...off), heldOut: mean(held) };
}

/** The kind that does better on patches it was not fitted to, with how well. */
export function bestCorrection(
  rgbs: readonly Rgb[],
  labs: readonly Lab[],
): { readonly correction: Correction; readonly residual: Residual } {
  const [linear, root] = (['linear', 'root-polynomial'] as const).map((kind) => ({
    correction: fitCorrection(rgbs, labs, kind),
    residual: residualOf(rgbs, labs, kind),
  }));
  return root!.residual.heldOut < linear!.residual.heldOut ? root! : linear!;
}
