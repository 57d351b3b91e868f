import Papa from 'papaparse';
import { BANDS, bandNm, spectrum } from '../../colour/grid.ts';
import { fail, ok, type Result } from '../../result.ts';
import { readCgats, type Sample, type Spectra, type SpectraRemark } from './cgats.ts';
import { readNumber } from './parse-number.ts';
import { resamplerFor } from './resample.ts';
import type { SpectraFault } from './spectra-fault.ts';

/** Why a file of measured curves cannot be read. */
export type CurvesFault =
  | SpectraFault
  | { readonly code: 'curves-twice'; readonly sample: string }
  | { readonly code: 'curves-gap'; readonly sample: string; readonly nm: number }
  | { readonly code: 'curves-name'; readonly row: number }
  | { readonly code: 'curves-none' };

/**
 * A file with a value above HIGHEST is in per cent; values from NOISE to 0 count as instrument
 * noise.
 */
const HIGHEST = 1.5;
const NOISE = -0.005;
const NM = /^\s*(?:SPECTRAL_?(?:NM)?|SPEC|NM|R)?[_\s]*(\d{3,4}(?:[.,]\d+)?)\s*(?:nm)?\s*$/i;
const NAMES = ['name', 'sample', 'sample_name', 'sample_id', 'pigment', 'colour', 'color', 'paint'];

/**
 * Reads measured reflectances from CGATS.17 / ISO 28178 text, or from CSV with one sample per row
 * under a heading of wavelengths or one per column beside a column of wavelengths. Accepts commas,
 * semicolons or tabs, decimal commas, quotes, comment lines with #, CRLF and a byte order mark.
 * Values are fractions, or per cent if any exceeds 1.5.
 */
export function readSpectra(text: string): Result<Spectra, CurvesFault> {
  const plain = text.replace(/^\uFEFF/, '');
  const spectra = /^\s*BEGIN_DATA\b/m.test(plain) ? readCgats(plain) : readCsv(plain);
  if (!spectra.ok) return spectra;
  const names = spectra.value.samples.map(({ name }) => name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  return twice === undefined ? spectra : fail({ code: 'curves-twice', sample: twice });
}

interface Table {
  readonly nms: readonly number[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

function readCsv(text: string): Result<Spectra, CurvesFault> {
  const lines = text
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== '' && !/^\s*"?#/.test(line));
  if (lines.length < 2) return fail({ code: 'curves-none' });
  const cells = Papa.parse<string[]>(lines.join('\n'), { delimiter: delimiterOf(lines) }).data;
  const table = upright(cells) ?? sideways(cells);
  if (table === null) return fail({ code: 'curves-none' });
  const sorted = table.nms.map((nm, column) => ({ nm, column })).sort((p, q) => p.nm - q.nm);
  const nms = sorted.map(({ nm }) => nm);
  const door = resamplerFor(nms);
  if (!door.ok) return door;

  const measured: { name: string; values: number[] }[] = [];
  for (const [i, { name, cells: row }] of table.rows.entries()) {
    if (name === '') return fail({ code: 'curves-name', row: i + 1 });
    const values: number[] = [];
    for (const { nm, column } of sorted) {
      const cell = (row[column] ?? '').trim();
      if (cell === '') return fail({ code: 'curves-gap', sample: name, nm });
      const value = readNumber(cell.replace(/\s*%$/, ''));
      if (value === null) return fail({ code: 'spectra-text', sample: name, nm, text: cell });
      values.push(value);
    }
    measured.push({ name, values });
  }
  if (measured.length === 0) return fail({ code: 'spectra-no-samples' });
  const percent = measured.some(({ values }) => values.some((value) => value > HIGHEST));
  const samples: Sample[] = [];
  for (const { name, values } of measured) {
    const scaled = values.map((value) => (percent ? value / 100 : value));
    const at = scaled.findIndex((value) => !(value >= NOISE && value <= HIGHEST));
    if (at >= 0)
      return fail({ code: 'spectra-range', sample: name, nm: nms[at]!, value: values[at]! });
    const R = door.value.resample(scaled.map((value) => Math.max(0, value)));
    samples.push({ name, R: spectrum<'R'>(R) });
  }
  const remarks: readonly SpectraRemark[] = [
    ...door.value.remarks,
    ...(percent ? [{ code: 'values-per-cent' } as const] : []),
  ];
  return ok({ samples, geometry: null, specular: null, remarks });
}

/** Table with wavelengths in the heading and one sample per row; null if it is not one. */
function upright(cells: readonly (readonly string[])[]): Table | null {
  const heading = cells[0]!;
  const bands = heading.flatMap((cell, column) => {
    const nm = NM.exec(cell)?.[1];
    return nm === undefined ? [] : [{ column, nm: readNumber(nm)! }];
  });
  if (bands.length < 2) return null;
  const words = heading.map((cell) => cell.trim().toLowerCase());
  const named = words.findIndex((word) => NAMES.includes(word));
  const first = heading.findIndex((_, column) => !bands.some((band) => band.column === column));
  const nameColumn = named >= 0 ? named : first;
  return {
    nms: bands.map(({ nm }) => nm),
    rows: cells.slice(1).map((row, i) => ({
      name: nameColumn < 0 ? `Sample ${i + 1}` : (row[nameColumn] ?? '').trim(),
      cells: bands.map(({ column }) => row[column] ?? ''),
    })),
  };
}

/**
 * Table with wavelengths in the first column and one sample per further column; null if it is not
 * one.
 */
function sideways(cells: readonly (readonly string[])[]): Table | null {
  const bands = cells.flatMap((row, at) => {
    const nm = NM.exec(row[0] ?? '')?.[1];
    return nm === undefined ? [] : [{ at, nm: readNumber(nm)! }];
  });
  if (bands.length < 2) return null;
  const headed = bands[0]!.at > 0 ? cells[bands[0]!.at - 1]! : null;
  const columns = Math.max(...bands.map(({ at }) => cells[at]!.length)) - 1;
  return {
    nms: bands.map(({ nm }) => nm),
    rows: Array.from({ length: columns }, (_, i) => ({
      name: headed === null ? `Sample ${i + 1}` : (headed[i + 1] ?? '').trim(),
      cells: bands.map(({ at }) => cells[at]![i + 1] ?? ''),
    })),
  };
}

/** Separator of the first line; tabs and semicolons win over commas, which may be decimal. */
function delimiterOf(lines: readonly string[]): string {
  const count = (mark: string) => lines[0]!.split(mark).length - 1;
  for (const mark of ['\t', ';']) if (count(mark) > 0 && count(mark) >= count(',') / 2) return mark;
  return ',';
}

const WAVELENGTHS = Array.from({ length: BANDS }, (_, band) => bandNm(band));
/** Decimal places: ten times finer than the repeatability of an instrument. */
const DIGITS = 5;

/** Writes samples as CSV, one per row, as fractions. {@link readSpectra} reads it back. */
export function spectraCsv(samples: readonly Sample[]): string {
  const quoted = (name: string) => `"${name.replaceAll('"', '""')}"`;
  return [
    `name,${WAVELENGTHS.join(',')}`,
    ...samples.map(({ name, R }) => [quoted(name), ...printed(R)].join(',')),
    '',
  ].join('\n');
}

/** Writes samples as CGATS.17 text, as fractions. */
export function spectraCgats(samples: readonly Sample[], geometry: string | null = null): string {
  const word = (name: string) => `"${name.replaceAll('"', "'")}"`;
  return [
    'CGATS.17',
    'ORIGINATOR\t"Kingcup"',
    ...(geometry === null ? [] : [`MEASUREMENT_GEOMETRY\t${word(geometry)}`]),
    `NUMBER_OF_FIELDS\t${BANDS + 2}`,
    'BEGIN_DATA_FORMAT',
    ['SAMPLE_ID', 'SAMPLE_NAME', ...WAVELENGTHS.map((nm) => `SPECTRAL_NM${nm}`)].join('\t'),
    'END_DATA_FORMAT',
    `NUMBER_OF_SETS\t${samples.length}`,
    'BEGIN_DATA',
    ...samples.map(({ name, R }, i) => [i + 1, word(name), ...printed(R)].join('\t')),
    'END_DATA',
    '',
  ].join('\n');
}

const printed = (R: Float64Array): string[] => Array.from(R, (v) => v.toFixed(DIGITS));
