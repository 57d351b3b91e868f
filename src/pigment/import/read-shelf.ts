import { NO_SURFACE, type Surface } from '../../optics/surface.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Basis, Shelf, ShelfPaint, ShelfRemark } from '../shelf.ts';
import { type Measured, resamplePaint, shelfFrom, shelfResamplerFor } from './assemble-shelf.ts';
import { readNumber } from './parse-number.ts';
import { readTable, type ShelfTable } from './shelf-csv.ts';
import type { ShelfFault } from './shelf-fault.ts';
import { readShelfJson } from './shelf-json.ts';

interface ReadOptions {
  /** Name of the shelf if the file has none: usually the file name. */
  readonly name: string;
  /** Overrides the surface of the file. */
  readonly surface?: Surface;
}

/**
 * Reads a shelf from the text of a file: our JSON (see {@link readShelfJson}) or a CSV of K and S. The
 * CSV:
 *
 * ```
 * # surface: 0.03,0.65
 * # basis: volume
 * index,pigment,coefficient,400,410,…,700
 * 1,Lead white,K,0.012,0.006,…
 * 1,Lead white,S,0.52,0.51,…
 * ```
 *
 * `# surface: k1,k2` has the Saunderson constants (default: none), `# basis: volume|mass|unknown`
 * the meaning of a part (default: unknown). The name column may also be headed colour, name or
 * paint; names are kept letter for letter. Wavelengths with steps up to 20 nm that cover 400 to 700
 * nm are resampled to the grid, with the ends extrapolated flat, and a remark. Accepts commas,
 * semicolons or tabs, decimal commas, quotes, CRLF and a byte order mark.
 */
export function readShelf(text: string, options: ReadOptions): Result<Shelf, ShelfFault> {
  const plain = text.replace(/^\uFEFF/, '');
  if (plain.trim() === '') return fail({ code: 'shelf-empty' });
  return plain.trimStart().startsWith('{')
    ? readShelfJson(plain, options)
    : readCsv(plain, options);
}

function readCsv(text: string, options: ReadOptions): Result<Shelf, ShelfFault> {
  const table = readTable(text);
  if (!table.ok) return table;
  const { comments, nms } = table.value;
  const basis = readBasis(comments.get('basis'));
  if (!basis.ok) return basis;
  const surface = surfaceOf(comments.get('surface'), options.surface);
  if (!surface.ok) return surface;
  const door = shelfResamplerFor(nms);
  if (!door.ok) return door;
  const rows = pairUp(table.value);
  if (!rows.ok) return rows;

  const paints: ShelfPaint[] = [];
  for (const row of rows.value) {
    const paint = resamplePaint(door.value, nms, row);
    if (!paint.ok) return paint;
    paints.push(paint.value);
  }
  const remarks: ShelfRemark[] = [...door.value.remarks];
  if (!comments.has('surface') && options.surface === undefined)
    remarks.push({ code: 'no-surface' });
  return shelfFrom({
    name: options.name,
    basis: basis.value,
    surface: surface.value,
    white: undefined,
    paints,
    remarks,
  });
}

/** Pairs the K row with the S row of each name, in the order of their first rows. */
function pairUp({ rows }: ShelfTable): Result<Measured[], ShelfFault> {
  const pairs: Measured[] = [];
  for (const pigment of new Set(rows.map((row) => row.pigment))) {
    const of = (row: 'K' | 'S') => rows.filter((one) => one.pigment === pigment && one.row === row);
    const [K, S] = [of('K'), of('S')];
    if (K.length > 1 || S.length > 1) return fail({ code: 'shelf-name-twice', pigment });
    if (K.length === 0) return fail({ code: 'shelf-row-missing', pigment, row: 'K' });
    if (S.length === 0) return fail({ code: 'shelf-row-missing', pigment, row: 'S' });
    pairs.push({ pigment, label: pigment, K: K[0]!.values, S: S[0]!.values });
  }
  return ok(pairs);
}

function surfaceOf(
  stated: string | undefined,
  wanted: Surface | undefined,
): Result<Surface, ShelfFault> {
  if (wanted !== undefined) return ok(wanted);
  return stated === undefined ? ok(NO_SURFACE) : readSurface(stated);
}

/**
 * Parses `k1,k2`, each 0 ≤ k < 1, as a surface with `specular: 'included'`; `0,0` is no surface.
 */
export function readSurface(text: string): Result<Surface, ShelfFault> {
  const pair = text.split(text.includes(';') ? ';' : ',').map(readNumber);
  const [k1, k2] = pair;
  const fits = (k: number | null | undefined): k is number => k != null && k >= 0 && k < 1;
  if (pair.length !== 2 || !fits(k1) || !fits(k2)) return fail({ code: 'shelf-surface', text });
  return ok({ k1, k2, specular: 'included' });
}

function readBasis(text: string | undefined): Result<Basis, ShelfFault> {
  const word = (text ?? 'unknown').toLowerCase();
  if (word === 'volume' || word === 'mass' || word === 'unknown') return ok(word);
  return fail({ code: 'shelf-basis', text: text ?? '' });
}
