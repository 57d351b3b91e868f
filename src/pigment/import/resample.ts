import { BANDS, bandNm, FIRST_NM, LAST_NM, STEP_NM } from '../../colour/grid.ts';
import { fail, ok, type Result } from '../../result.ts';

/** Resampler from a file's wavelengths to the grid. */
export interface Resampler {
  /** Takes one value per wavelength of the file; returns BANDS new values. */
  readonly resample: (values: readonly number[]) => Float64Array;
  readonly remarks: readonly GridRemark[];
}

/** What was extrapolated or resampled, in nanometres of the file. */
export type GridRemark =
  | { readonly code: 'grid-starts-late'; readonly nm: number }
  | { readonly code: 'grid-ends-early'; readonly nm: number }
  | { readonly code: 'grid-resampled'; readonly stepNm: number };

/** Why wavelengths cannot be resampled: range too short, step too coarse, or not rising. */
export type GridFault =
  | { readonly code: 'grid-short'; readonly firstNm: number; readonly lastNm: number }
  | { readonly code: 'grid-coarse'; readonly fromNm: number; readonly toNm: number }
  | { readonly code: 'grid-order'; readonly nm: number };

/** Range that a file must cover, in nanometres. */
const NEEDED = [400, 700] as const;
/** Nanometres. */
const WIDEST_STEP = 20;

/**
 * Builds a resampler from a file's wavelengths to the grid. If the file has all our bands, its
 * values there are used unchanged, because K and S are smooth. Finer steps that miss our bands are
 * averaged with a triangle of 10 nm half width (the bandpass assumed by 10 nm weights, ASTM E308
 * practice). Wider or shifted steps are interpolated by a monotone cubic (Fritsch and Carlson, SIAM
 * J. Numer. Anal. 17 (1980) 238), which never overshoots, so that K and S cannot become negative.
 * Missing ends are extrapolated flat.
 * @param nms wavelengths in nanometres; must rise, in steps of at most 20, and cover 400 to 700
 */
export function resamplerFor(nms: readonly number[]): Result<Resampler, GridFault> {
  for (let i = 1; i < nms.length; i++) {
    if (!(nms[i]! > nms[i - 1]!)) return fail({ code: 'grid-order', nm: nms[i]! });
  }
  const [first, last] = [nms[0] ?? 0, nms.at(-1) ?? 0];
  if (nms.length < 2 || first > NEEDED[0] || last < NEEDED[1])
    return fail({ code: 'grid-short', firstNm: first, lastNm: last });
  for (let i = 1; i < nms.length; i++) {
    if (nms[i]! - nms[i - 1]! > WIDEST_STEP)
      return fail({ code: 'grid-coarse', fromNm: nms[i - 1]!, toNm: nms[i]! });
  }
  const remarks: GridRemark[] = [];
  if (first > FIRST_NM) remarks.push({ code: 'grid-starts-late', nm: first });
  if (last < LAST_NM) remarks.push({ code: 'grid-ends-early', nm: last });
  const step = (last - first) / (nms.length - 1);
  const onGrid = Array.from({ length: BANDS }, (_, band) => bandNm(band)).every(
    (nm) => nm < first || nm > last || nms.includes(nm),
  );
  const fine = step < 0.75 * STEP_NM;
  if (fine || !onGrid) remarks.push({ code: 'grid-resampled', stepNm: step });
  const bring = onGrid ? picked : fine ? averaged : joined;
  const resample = (values: readonly number[]) => bring(nms, values);
  return ok({ resample, remarks });
}

function picked(nms: readonly number[], values: readonly number[]): Float64Array {
  return Float64Array.from({ length: BANDS }, (_, band) => {
    const i = nms.indexOf(bandNm(band));
    if (i >= 0) return values[i]!;
    return bandNm(band) < nms[0]! ? values[0]! : values.at(-1)!;
  });
}

/** Triangular average, sampled every nanometre of the linearly interpolated values. */
function averaged(nms: readonly number[], values: readonly number[]): Float64Array {
  return Float64Array.from({ length: BANDS }, (_, band) => {
    let sum = 0;
    for (let off = 1 - STEP_NM; off < STEP_NM; off++)
      sum += (STEP_NM - Math.abs(off)) * straight(nms, values, bandNm(band) + off);
    return sum / STEP_NM ** 2;
  });
}

function straight(nms: readonly number[], values: readonly number[], nm: number): number {
  if (nm <= nms[0]!) return values[0]!;
  if (nm >= nms.at(-1)!) return values.at(-1)!;
  const i = nms.findLastIndex((at) => at <= nm);
  const t = (nm - nms[i]!) / (nms[i + 1]! - nms[i]!);
  return (1 - t) * values[i]! + t * values[i + 1]!;
}

function joined(nms: readonly number[], values: readonly number[]): Float64Array {
  const slopes = monotoneSlopes(nms, values);
  return Float64Array.from({ length: BANDS }, (_, band) => {
    const nm = bandNm(band);
    if (nm <= nms[0]!) return values[0]!;
    if (nm >= nms.at(-1)!) return values.at(-1)!;
    const i = nms.findLastIndex((at) => at <= nm);
    const h = nms[i + 1]! - nms[i]!;
    const t = (nm - nms[i]!) / h;
    const u = 1 - t;
    return (
      u * u * (1 + 2 * t) * values[i]! +
      t * u * u * h * slopes[i]! +
      t * t * (3 - 2 * t) * values[i + 1]! -
      t * t * u * h * slopes[i + 1]!
    );
  });
}

/** Slopes at the knots: harmonic mean of the neighbouring secants; 0 at a local extremum. */
function monotoneSlopes(nms: readonly number[], values: readonly number[]): number[] {
  const secant = (i: number) => (values[i + 1]! - values[i]!) / (nms[i + 1]! - nms[i]!);
  return nms.map((_, i) => {
    if (i === 0) return secant(0);
    if (i === nms.length - 1) return secant(i - 1);
    const [left, right] = [secant(i - 1), secant(i)];
    return left * right <= 0 ? 0 : (2 * left * right) / (left + right);
  });
}
