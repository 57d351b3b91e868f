import { type Spectrum, spectrum } from '../../colour/grid.ts';
import type { Surface } from '../../optics/surface.ts';
import { fail, ok, type Result } from '../../result.ts';
import { findWhite } from '../masstone.ts';
import type { Basis, Shelf, ShelfPaint, ShelfRemark } from '../shelf.ts';
import { type GridFault, type Resampler, resamplerFor } from './resample.ts';
import type { ShelfFault } from './shelf-fault.ts';

/** Median K or S above these means that a file is in per cent: whites have S = 1, blacks K = 10. */
const PERCENT = { K: 60, S: 20 } as const;

/** K and S of one paint from a file, on the file's wavelengths. */
export interface Measured {
  readonly pigment: string;
  readonly label: string;
  readonly K: readonly number[];
  readonly S: readonly number[];
}

/** {@link resamplerFor} with its faults as shelf faults. @param nms the file's wavelengths, nm */
export function shelfResamplerFor(nms: readonly number[]): Result<Resampler, ShelfFault> {
  const door = resamplerFor(nms);
  return door.ok ? door : fail(shelfGridFault(door.fault));
}

/** Validates a paint's K and S on the file's wavelengths, then resamples them to the grid. */
export function resamplePaint(
  door: Resampler,
  nms: readonly number[],
  { pigment, label, K, S }: Measured,
): Result<ShelfPaint, ShelfFault> {
  const fault = checkValues(pigment, nms, K, S);
  if (fault !== null) return fail(fault);
  const onGrid = <Kind extends string>(values: readonly number[]): Spectrum<Kind> =>
    spectrum<Kind>(door.resample(values));
  return ok({ pigment, label, paint: { K: onGrid<'K'>(K), S: onGrid<'S'>(S) } });
}

/** The first physically impossible value of K or S, or a file in per cent; null if valid. */
function checkValues(
  pigment: string,
  nms: readonly number[],
  K: readonly number[],
  S: readonly number[],
): ShelfFault | null {
  for (const [i, nm] of nms.entries()) {
    if (!(K[i]! >= 0)) return { code: 'shelf-K-negative', pigment, nm, value: K[i]! };
    if (!(S[i]! > 0)) return { code: 'shelf-S-not-positive', pigment, nm, value: S[i]! };
  }
  for (const [row, values] of [
    ['S', S],
    ['K', K],
  ] as const) {
    const middle = values.toSorted((p, q) => p - q)[values.length >> 1]!;
    if (middle > PERCENT[row]) return { code: 'shelf-percent', pigment, row, value: middle };
  }
  return null;
}

/** Builds a shelf from its paints: checks for duplicate names, finds the white, adds remarks. */
export function shelfFrom(given: {
  readonly name: string;
  readonly basis: Basis;
  readonly surface: Surface;
  /** null for no white; undefined to look for one with findWhite(). */
  readonly white: string | null | undefined;
  readonly paints: readonly ShelfPaint[];
  readonly remarks: readonly ShelfRemark[];
}): Result<Shelf, ShelfFault> {
  const { name, basis, surface, paints } = given;
  if (paints.length === 0) return fail({ code: 'shelf-empty' });
  const names = paints.map(({ pigment }) => pigment);
  const twice = names.find((each, i) => names.indexOf(each) !== i);
  if (twice !== undefined) return fail({ code: 'shelf-name-twice', pigment: twice });
  const white = given.white === undefined ? findWhite(paints, surface) : given.white;
  if (white !== null && !names.includes(white))
    return fail({ code: 'shelf-white-unknown', pigment: white });
  const remarks = [...given.remarks, ...shelfRemarks(white, paints.length, basis)];
  return ok({ name, basis, surface, white, paints, remarks });
}

function* shelfRemarks(white: string | null, count: number, basis: Basis): Generator<ShelfRemark> {
  if (white === null) yield { code: 'no-white' };
  if (count === 1) yield { code: 'one-paint' };
  if (basis !== 'volume') yield { code: 'parts-not-volumes' };
}

function shelfGridFault(fault: GridFault): ShelfFault {
  switch (fault.code) {
    case 'grid-short':
      return { ...fault, code: 'shelf-grid-short' };
    case 'grid-coarse':
      return { ...fault, code: 'shelf-grid-coarse' };
    case 'grid-order':
      return { ...fault, code: 'shelf-grid-order' };
  }
}
