import { type Reflectance, spectrum } from '../../colour/grid.ts';
import { fail, ok, type Result } from '../../result.ts';
import { readNumber } from './parse-number.ts';
import { type GridRemark, resamplerFor } from './resample.ts';
import type { SpectraFault } from './spectra-fault.ts';

/** One measured spectrum from a file. */
export interface Sample {
  readonly name: string;
  /** Reflectance 0…1 on the grid, as measured (no surface correction). */
  readonly R: Reflectance;
}

/** What was assumed when a file of spectra was read. */
export type SpectraRemark =
  | GridRemark
  | { readonly code: 'values-per-cent' }
  | { readonly code: 'noise-below-zero' };

/** Contents of a file of measured spectra. */
export interface Spectra {
  readonly samples: readonly Sample[];
  /** Measurement geometry as written in the file; null if absent. */
  readonly geometry: string | null;
  /**
   * A 45/0 instrument sees no gloss: such spectra belong to a surface with `specular: 'excluded'`.
   */
  readonly specular: 'excluded' | null;
  readonly remarks: readonly SpectraRemark[];
}

/** A file with a value above this is in per cent: no paint has a reflectance of 1.5. */
const HIGHEST = 1.5;
/** Values from here to 0 count as instrument noise; lower ones are errors. */
const NOISE = -0.005;
/** Field names of bands: SPECTRAL_NM380, SPECTRAL_NM_380, SPECTRAL_380, SPEC_380, nm380, R_380. */
const FIELD = /^(?:SPECTRAL_?(?:NM)?|SPEC|NM|R)_?(\d{3,4}(?:\.\d+)?)$/i;

/**
 * Reads reflectance spectra from CGATS.17 / ISO 28178 text. Accepts the common ways of naming
 * fields after wavelengths, decimal commas, quoted names and tabs. Values are fractions, or per
 * cent if any exceeds 1.5. Steps up to 20 nm that cover 400 to 700 nm are resampled to the grid.
 * Reads the first table that has spectra.
 * @param text a byte order mark is ignored
 */
export function readCgats(text: string): Result<Spectra, SpectraFault> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const tables = tablesOf(lines);
  if (tables.length === 0) return fail({ code: 'spectra-not-cgats' });
  const table = tables.find(({ fields }) => fields.some((field) => FIELD.test(field)));
  if (table === undefined) return fail({ code: 'spectra-none' });
  if (!table.closed) return fail({ code: 'spectra-cut' });
  if (table.rows.length === 0) return fail({ code: 'spectra-no-samples' });

  const bands = table.fields
    .flatMap((field, column) => {
      const nm = FIELD.exec(field)?.[1];
      return nm === undefined ? [] : [{ column, nm: Number(nm) }];
    })
    .toSorted((p, q) => p.nm - q.nm);
  const nms = bands.map(({ nm }) => nm);
  const door = resamplerFor(nms);
  if (!door.ok) return door;

  const measured: { name: string; values: number[] }[] = [];
  for (const [i, line] of table.rows.entries()) {
    const cells = cellsOf(line, table.fields.length);
    if (cells.length !== table.fields.length)
      return fail({
        code: 'spectra-row',
        row: i + 1,
        values: cells.length,
        fields: table.fields.length,
      });
    const name = nameOf(table.fields, cells, i);
    const values: number[] = [];
    for (const { column, nm } of bands) {
      const value = readNumber(cells[column]!);
      if (value === null)
        return fail({ code: 'spectra-text', sample: name, nm, text: cells[column]! });
      values.push(value);
    }
    measured.push({ name, values });
  }
  const percent = measured.some(({ values }) => values.some((value) => value > HIGHEST));
  return fractions(measured, nms, percent, door.value.resample, {
    geometry: keyword(lines, 'MEASUREMENT_GEOMETRY'),
    remarks: [...door.value.remarks, ...(percent ? [{ code: 'values-per-cent' } as const] : [])],
  });
}

function fractions(
  measured: readonly { readonly name: string; readonly values: readonly number[] }[],
  nms: readonly number[],
  percent: boolean,
  resample: (values: readonly number[]) => Float64Array,
  about: { readonly geometry: string | null; readonly remarks: readonly SpectraRemark[] },
): Result<Spectra, SpectraFault> {
  let dark = false;
  const samples: Sample[] = [];
  for (const { name, values } of measured) {
    const scaled = values.map((value) => (percent ? value / 100 : value));
    for (const [i, nm] of nms.entries()) {
      const value = scaled[i]!;
      if (!(value >= NOISE && value <= HIGHEST))
        return fail({ code: 'spectra-range', sample: name, nm, value: values[i]! });
      if (value < 0) dark = true;
    }
    const R = resample(scaled.map((value) => Math.max(0, value)));
    samples.push({ name, R: spectrum<'R'>(R) });
  }
  const remarks: readonly SpectraRemark[] = dark
    ? [...about.remarks, { code: 'noise-below-zero' }]
    : about.remarks;
  const specular = /\b(45\D{0,3}0|0\D{0,3}45)\b/.test(about.geometry ?? '') ? 'excluded' : null;
  return ok({ samples, geometry: about.geometry, specular, remarks });
}

/** One table of a CGATS text. */
interface CgatsTable {
  readonly fields: readonly string[];
  readonly rows: readonly string[];
  /** Whether END_DATA was found; if not, the file is truncated. */
  readonly closed: boolean;
}

/** All tables of a CGATS text: field names and unparsed rows. */
export function tablesOf(lines: readonly string[]): CgatsTable[] {
  const tables: CgatsTable[] = [];
  let fields: string[] = [];
  let rows: string[] | null = null;
  let format = false;
  for (const line of lines) {
    const word = line.trim().split(/\s+/)[0]!.toUpperCase();
    if (word === 'BEGIN_DATA_FORMAT') [format, fields] = [true, []];
    else if (word === 'END_DATA_FORMAT') format = false;
    else if (word === 'BEGIN_DATA') rows = [];
    else if (word === 'END_DATA') {
      tables.push({ fields, rows: rows ?? [], closed: true });
      rows = null;
    } else if (word === '' || word.startsWith('#')) continue;
    else if (format) fields.push(...line.trim().split(/\s+/));
    else rows?.push(line);
  }
  if (rows !== null) tables.push({ fields, rows, closed: false });
  return tables;
}

/** Splits a line at tabs if that gives `fields` cells, else at spaces outside quotes. */
export function cellsOf(line: string, fields: number): string[] {
  const tabbed = line.split('\t');
  if (tabbed.length === fields) return tabbed.map(unquoted);
  return Array.from(line.matchAll(/"((?:[^"]|"")*)"|\S+/g), ([cell]) => unquoted(cell));
}

const unquoted = (cell: string): string =>
  /^\s*"(.*)"\s*$/s.exec(cell)?.[1]?.replaceAll('""', '"') ?? cell.trim();

function nameOf(fields: readonly string[], cells: readonly string[], row: number): string {
  for (const wanted of ['SAMPLE_NAME', 'SAMPLE_ID', 'SAMPLEID', 'SAMPLE_LOC']) {
    const name = cells[fields.findIndex((field) => field.toUpperCase() === wanted)];
    if (name !== undefined && name !== '') return name;
  }
  return `Sample ${row + 1}`;
}

function keyword(lines: readonly string[], name: string): string | null {
  const line = lines.find((each) => each.trim().split(/\s+/)[0] === name);
  return line === undefined ? null : unquoted(line.trim().slice(name.length));
}
