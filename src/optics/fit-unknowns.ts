import { BANDS, type Spectrum, spectrum } from '../colour/grid.ts';
import {
  basisOf,
  type CurvePrior,
  logCurve,
  type PaintPrior,
  type PriorBasis,
} from './curve-prior.ts';
import type { Paint } from './opaque.ts';

/** A paint of a fit: known, or to be fitted with a prior (starting at its mean or at `start`). */
export type FitPaint =
  | { readonly known: Paint }
  | { readonly prior: PaintPrior; readonly start?: Paint };

/** One unknown curve and the offset of its coordinates in the vector of unknowns. */
interface Curve {
  readonly paint: number;
  readonly kind: 'K' | 'S';
  readonly basis: PriorBasis;
  readonly offset: number;
}

/** Layout of the vector of unknowns of a fit: the curves' coordinates, then the settings. */
export interface Unknowns {
  readonly curves: readonly Curve[];
  /** Index of each paint's K in `curves`, S follows it; −1 for a known paint. */
  readonly curveOf: Int32Array;
  readonly settingsAt: number;
  readonly size: number;
}

/** Lays out the unknowns of a fit. @param settings their number. @param detail see FitOptions */
export function unknownsOf(
  paints: readonly FitPaint[],
  settings: number,
  detail?: number,
): Unknowns {
  const cache = new Map<CurvePrior, PriorBasis>();
  const basis = (prior: CurvePrior): PriorBasis => {
    const made = cache.get(prior) ?? basisOf(prior, detail);
    cache.set(prior, made);
    return made;
  };
  const curves: Curve[] = [];
  const curveOf = new Int32Array(paints.length).fill(-1);
  let offset = 0;
  paints.forEach((each, paint) => {
    if ('known' in each) return;
    curveOf[paint] = curves.length;
    for (const kind of ['K', 'S'] as const) {
      const curve = { paint, kind, basis: basis(each.prior[kind]), offset };
      curves.push(curve);
      offset += curve.basis.size;
    }
  });
  return { curves, curveOf, settingsAt: offset, size: offset + settings };
}

/**
 * Deviation of a curve from its prior mean at `x`: BANDS values of the logarithm, newly allocated.
 */
export function changeOf({ basis, offset }: Curve, x: Float64Array): Float64Array {
  const out = new Float64Array(BANDS);
  for (let band = 0; band < BANDS; band++)
    for (let k = 0; k < basis.size; k++)
      out[band]! += basis.rows[band * basis.size + k]! * x[offset + k]!;
  return out;
}

/** The paints at a vector of unknowns; known paints unchanged, the others newly allocated. */
export function paintsOf(
  { curves, curveOf }: Unknowns,
  paints: readonly FitPaint[],
  x: Float64Array,
): Paint[] {
  const exp = <Kind extends string>(curve: Curve): Spectrum<Kind> =>
    spectrum<Kind>(changeOf(curve, x).map((v, band) => Math.exp(curve.basis.mean[band]! + v)));
  return paints.map((paint, i) => {
    if ('known' in paint) return paint.known;
    const at = curveOf[i]!;
    return { K: exp<'K'>(curves[at]!), S: exp<'S'>(curves[at + 1]!) };
  });
}

/** The vector of unknowns nearest to the starts of the paints, followed by the settings. */
export function startOf(
  { curves, size, settingsAt }: Unknowns,
  paints: readonly FitPaint[],
  settings: readonly number[],
): Float64Array {
  const x = new Float64Array(size);
  for (const { paint, kind, basis, offset } of curves) {
    const given = paints[paint]!;
    if ('known' in given || !given.start) continue;
    const wanted = logCurve(given.start[kind]);
    // The basis is orthogonal, so each coordinate is an independent projection.
    for (let k = 0; k < basis.size; k++) {
      let along = 0;
      let length = 0;
      for (let band = 0; band < BANDS; band++) {
        const b = basis.rows[band * basis.size + k]!;
        along += b * (wanted[band]! - basis.mean[band]!);
        length += b * b;
      }
      x[offset + k] = along / length;
    }
  }
  x.set(settings, settingsAt);
  return x;
}
