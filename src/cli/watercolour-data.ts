import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import Papa from 'papaparse';
import { BANDS, FIRST_NM, LAST_NM, type Reflectance, STEP_NM, spectrum } from '../colour/grid.ts';
import type { MeasuredWashMixture, WashData } from '../optics/wash-validation.ts';
import type { Wash } from '../optics/watercolour-wash.ts';

/** A file that cannot be read, said in one sentence. */
export class FileFault extends Error {}

interface Table {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
  /** The column of a heading. */
  column(heading: string): number;
  /** The reflectance of a row; the grid's first bands are carried on flat from 400 where they lack. */
  reflectance(row: number): Reflectance;
  fault(row: number, what: string): FileFault;
}

function readTable(file: string): Table {
  const name = basename(file);
  if (!existsSync(file)) throw new FileFault(`There is no file ${file}.`);
  const { data } = Papa.parse<string[]>(readFileSync(file, 'utf8'), {
    comments: '#',
    skipEmptyLines: 'greedy',
  });
  const headings = data[0]?.map((heading) => heading.trim()) ?? [];
  const column = (heading: string): number => {
    const at = headings.indexOf(heading);
    if (at < 0) throw new FileFault(`${name} has no column ${heading}.`);
    return at;
  };
  const rows = data.slice(1);
  const fault = (row: number, what: string) => new FileFault(`${name}, row ${row + 1}: ${what}.`);
  const bands = headings.includes('380') ? FIRST_NM : 400;
  const columns: number[] = [];
  for (let nm = bands; nm <= LAST_NM; nm += STEP_NM) columns.push(column(String(nm)));
  const reflectance = (row: number): Reflectance => {
    const values = columns.map((at) => Number(rows[row]![at]?.trim() || Number.NaN));
    const gap = values.findIndex((v) => !Number.isFinite(v));
    if (gap >= 0) throw fault(row, `no reflectance at ${bands + gap * STEP_NM} nm`);
    const outside = values.find((v) => v < 0 || v > 1.2);
    if (outside !== undefined)
      throw fault(row, `a reflectance of ${outside}, where fractions from 0 to 1 are expected`);
    return spectrum<'R'>([...Array(BANDS - values.length).fill(values[0]!), ...values]);
  };
  return { name, rows, column, reflectance, fault };
}

function amount(table: Table, row: number, column: number): number {
  const value = Number(table.rows[row]![column]?.trim() || Number.NaN);
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw table.fault(row, `an amount of ${table.rows[row]![column] ?? 'nothing'}`);
  return value;
}

/** Washes of single pigments: rows with quantity R, the first of them bare paper. */
export function readWashes(file: string): WashData {
  const table = readTable(file);
  const [name, quantity, ml] = ['pigment', 'quantity', 'amount_ml'].map(table.column);
  const seen = table.rows.flatMap((row, i) => (row[quantity!]?.trim() === 'R' ? [i] : []));
  const pigmentOf = (row: number): string => table.rows[row]![name!]!.trim();
  const bare = seen.find((row) => pigmentOf(row) === 'Paper');
  if (bare === undefined) throw new FileFault(`${table.name} has no row of bare Paper.`);
  const washes = seen.filter((row) => row !== bare);
  const pigments = [...new Set(washes.map(pigmentOf))];
  if (pigments.length === 0) throw new FileFault(`${table.name} has no washes.`);
  const singles = washes.map((row): Wash => {
    const amounts = new Float64Array(pigments.length);
    amounts[pigments.indexOf(pigmentOf(row))] = amount(table, row, ml!);
    if (amounts.every((v) => v === 0)) throw table.fault(row, 'a wash of no paint');
    return { amounts, R: table.reflectance(row) };
  });
  return { pigments, paper: table.reflectance(bare), singles };
}

/** Mixtures of two of these pigments. */
export function readMixtures(file: string, pigments: readonly string[]): MeasuredWashMixture[] {
  const table = readTable(file);
  const sides = ['a', 'b'].map((side) => ({
    name: table.column(`pigment_${side}`),
    ml: table.column(`amount_${side}_ml`),
  }));
  if (table.rows.length === 0) throw new FileFault(`${table.name} has no mixtures.`);
  return table.rows.map((cells, row) => {
    const amounts = new Float64Array(pigments.length);
    const names = sides.map(({ name, ml }) => {
      const pigment = cells[name]?.trim() ?? '';
      const at = pigments.indexOf(pigment);
      if (at < 0) throw table.fault(row, `${pigment || 'a pigment without a name'} has no wash`);
      amounts[at]! += amount(table, row, ml);
      return pigment;
    });
    if (amounts.every((v) => v === 0)) throw table.fault(row, 'a mixture of no paint');
    return { pair: names.sort().join(' and '), amounts, R: table.reflectance(row) };
  });
}
