import { type Spectrum, spectrum } from '../colour/grid.ts';
import { NO_SURFACE, type Surface } from '../optics/surface.ts';
import { fail, ok, type Result } from '../result.ts';
import type { ShelfFault } from './fault.ts';
import { readNumber } from './number.ts';
import { doorOf, type GridFault } from './resample.ts';
import type { Basis, Shelf, ShelfPaint } from './shelf.ts';
import { readTable } from './table.ts';
import { findWhite } from './white.ts';

export interface ReadOptions {
  /** What the shelf is called: a file's name as a rule. */
  readonly name: string;
  /** Used in place of the surface that the file states. */
  readonly surface?: Surface;
}

/** Relative S far above any white's: the file counts in per cent. */
const PERCENT_S = 20;

/** A shelf from the text of a file: our JSON or a CSV of K and S. */
export function readShelf(text: string, options: ReadOptions): Result<Shelf, ShelfFault> {
  return readCsvShelf(text, options);
}

function readCsvShelf(text: string, options: ReadOptions): Result<Shelf, ShelfFault> {
  const table = readTable(text);
  if (!table.ok) return table;
  const { comments, nms, rows } = table.value;
  const door = doorOf(nms);
  if (!door.ok) return fail(shelfGridFault(door.fault));
  const remarks = [...door.value.remarks];

  const stated = comments.get('surface');
  const surface = stated === undefined ? ok(NO_SURFACE) : readSurface(stated);
  if (!surface.ok && options.surface === undefined) return surface;
  if (stated === undefined && options.surface === undefined)
    remarks.push('The file states no surface: its values are taken as measured, with none added.');
  const basis = readBasis(comments.get('basis'));
  if (!basis.ok) return basis;

  const names = [...new Set(rows.map(({ pigment }) => pigment))];
  const paints: ShelfPaint[] = [];
  for (const pigment of names) {
    const of = (row: 'K' | 'S') => rows.filter((one) => one.pigment === pigment && one.row === row);
    const [K, S] = [of('K'), of('S')];
    if (K.length > 1 || S.length > 1) return fail({ code: 'shelf-name-twice', pigment });
    if (K.length === 0) return fail({ code: 'shelf-row-missing', pigment, row: 'K' });
    if (S.length === 0) return fail({ code: 'shelf-row-missing', pigment, row: 'S' });
    const fault = checkValues(pigment, nms, K[0]!.values, S[0]!.values);
    if (fault !== null) return fail(fault);
    const onGrid = (values: readonly number[]) => spectrum(door.value.resample(values));
    paints.push({
      pigment,
      label: pigment,
      paint: {
        K: onGrid(K[0]!.values) as Spectrum<'K'>,
        S: onGrid(S[0]!.values) as Spectrum<'S'>,
      },
    });
  }
  const seen = options.surface ?? (surface.ok ? surface.value : NO_SURFACE);
  const white = findWhite(paints, seen);
  if (white === null)
    remarks.push(
      'No white was found on this shelf: colours lighter than its paints are out of reach.',
    );
  if (paints.length === 1)
    remarks.push('There is one paint on this shelf, so nothing can be mixed from it yet.');
  return ok({ name: options.name, basis: basis.value, surface: seen, white, paints, remarks });
}

/** Absorption and scattering as physics allows them, on the file's own wavelengths; null if so. */
export function checkValues(
  pigment: string,
  nms: readonly number[],
  K: readonly number[],
  S: readonly number[],
): ShelfFault | null {
  for (const [i, nm] of nms.entries()) {
    if (!(K[i]! >= 0)) return { code: 'shelf-K-negative', pigment, nm, value: K[i]! };
    if (!(S[i]! > 0)) return { code: 'shelf-S-not-positive', pigment, nm, value: S[i]! };
  }
  const middle = S.toSorted((p, q) => p - q)[S.length >> 1]!;
  return middle > PERCENT_S ? { code: 'shelf-percent', pigment, value: middle } : null;
}

/** `k1,k2`, each 0 up to but not 1. */
export function readSurface(text: string): Result<Surface, ShelfFault> {
  const pair = text.split(/[,;]\s*/).map(readNumber);
  const [k1, k2] = pair;
  const fits = (k: number | null | undefined): k is number => k != null && k >= 0 && k < 1;
  if (pair.length !== 2 || !fits(k1) || !fits(k2)) return fail({ code: 'shelf-surface', text });
  return ok({ k1, k2, specular: 'included' });
}

export function readBasis(text: string | undefined): Result<Basis, ShelfFault> {
  const word = (text ?? 'unknown').toLowerCase();
  if (word === 'volume' || word === 'mass' || word === 'unknown') return ok(word);
  return fail({ code: 'shelf-basis', text: text ?? '' });
}

const shelfGridFault = (fault: GridFault): ShelfFault => {
  switch (fault.code) {
    case 'grid-short':
      return { ...fault, code: 'shelf-grid-short' };
    case 'grid-coarse':
      return { ...fault, code: 'shelf-grid-coarse' };
    case 'grid-order':
      return { ...fault, code: 'shelf-grid-order' };
  }
};
