import { Matrix, solve } from 'ml-matrix';
import { deltaE00 } from '../colour/difference.ts';
import { type Lab, labOfXYZ, xyzOfLab } from '../colour/lab.ts';
import { D65, type XYZ } from '../colour/observer.ts';
import type { Rgb } from './robust-mean.ts';

/** Model from linear RGB to XYZ: a 3 × 3 matrix, or a matrix on root polynomials of degree 2. */
export type CorrectionKind = 'linear' | 'root-polynomial';

/** A colour correction fitted to patches of known colour. */
export interface ColourCorrection {
  readonly kind: CorrectionKind;
  /** CIELAB (D65) of white-balanced linear RGB. */
  labOf(rgb: Rgb): Lab;
}

/** Errors of a correction on the patches (CIEDE2000). */
export interface CorrectionError {
  readonly mean: number;
  readonly max: number;
  /** Mean leave-one-out error: the error to expect for colours that are not on the chart. */
  readonly heldOut: number;
}

/**
 * Root-polynomial terms R G B √(RG) √(GB) √(RB). They scale with the exposure, so that a correction
 * stays valid at another exposure.
 * @see G. Finlayson, M. Mackiewicz, A. Hurlbert, IEEE Trans. Image Process. 24 (2015) 1460-1470
 */
export function rootTerms([r, g, b]: Rgb): number[] {
  const root = (v: number) => Math.sqrt(Math.max(v, 0));
  return [r, g, b, root(r * g), root(g * b), root(r * b)];
}

const termsOf = (kind: CorrectionKind, rgb: Rgb): number[] =>
  kind === 'linear' ? [...rgb] : rootTerms(rgb);

/**
 * Derivative of CIELAB's cube root by X ÷ Xw, bounded so that dark patches do not dominate a fit.
 */
const lightnessSlope = (t: number): number => 1 / (3 * Math.cbrt(Math.max(t, 0.02)) ** 2);

/**
 * Fits a correction to patches of known colour by least squares in X, Y and Z, with each patch
 * weighted to approximate CIELAB differences.
 *
 * @param rgbs white-balanced linear RGB, at least as many as the correction has terms
 * @param labs known colours under D65, in the same order
 * @throws RangeError when there are too few patches
 */
export function fitCorrection(
  rgbs: readonly Rgb[],
  labs: readonly Lab[],
  kind: CorrectionKind,
): ColourCorrection {
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

/** Errors of one kind of correction, fitted to all patches and leave-one-out. */
export function correctionErrorOf(
  rgbs: readonly Rgb[],
  labs: readonly Lab[],
  kind: CorrectionKind,
): CorrectionError {
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

/** The kind of correction with the smaller leave-one-out error, fitted to all patches. */
export function bestCorrection(
  rgbs: readonly Rgb[],
  labs: readonly Lab[],
): { readonly correction: ColourCorrection; readonly residual: CorrectionError } {
  const [linear, root] = (['linear', 'root-polynomial'] as const).map((kind) => ({
    correction: fitCorrection(rgbs, labs, kind),
    residual: correctionErrorOf(rgbs, labs, kind),
  }));
  return root!.residual.heldOut < linear!.residual.heldOut ? root! : linear!;
}
