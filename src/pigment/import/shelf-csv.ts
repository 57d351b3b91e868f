import Papa from 'papaparse';
import { fail, ok, type Result } from '../../result.ts';
import { readNumber } from './parse-number.ts';
import type { ShelfFault } from './shelf-fault.ts';

/** One row of K or S on the file's wavelengths. */
interface TableRow {
  readonly pigment: string;
  readonly row: 'K' | 'S';
  readonly values: readonly number[];
}

/** Parsed contents of a CSV shelf. */
export interface ShelfTable {
  /** Values of its `# key: value` comment lines by key: `surface`, `basis`, … */
  readonly comments: ReadonlyMap<string, string>;
  readonly nms: readonly number[];
  readonly rows: readonly TableRow[];
}

const COMMENT = /^\s*"?\s*#/;
const NAME_HEADINGS = ['pigment', 'colour', 'color', 'name', 'paint'];
const ROW_HEADINGS = ['coefficient', 'row', 'kind', 'quantity'];

/**
 * Parses a CSV of K and S: comment lines with #, one heading, then a K and an S row for each paint.
 * Names are kept letter for letter. Accepts commas, semicolons or tabs as separators, decimal
 * commas, quoted names, CRLF and a byte order mark.
 */
export function readTable(text: string): Result<ShelfTable, ShelfFault> {
  const comments = new Map<string, string>();
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  for (const line of lines) {
    // Spreadsheets quote such a line or pad it with empty cells.
    const said = /^\s*"?\s*#\s*([\w-]+)\s*:\s*(.*?)["\s,;]*$/.exec(line);
    if (said !== null && !comments.has(said[1]!.toLowerCase()))
      comments.set(said[1]!.toLowerCase(), said[2]!);
  }
  const body = lines.filter((line) => line.trim() !== '' && !COMMENT.test(line));
  if (body.length === 0) return fail({ code: 'shelf-empty' });
  const cells = Papa.parse<string[]>(body.join('\n'), {
    delimiter: delimiterOf(body[0]!),
  }).data;
  const heading = cells[0]!.map((cell) => cell.trim());
  const bands = heading.flatMap((cell, column) => {
    const nm = /^(?:nm)?\s*(\d{3,4}(?:[.,]\d+)?)\s*(?:nm)?$/i.exec(cell);
    return nm === null ? [] : [{ column, nm: readNumber(nm[1]!)! }];
  });
  const words = heading.map((cell) => cell.toLowerCase());
  const nameColumn = words.findIndex((word) => NAME_HEADINGS.includes(word));
  const rowColumn = words.findIndex((word) => ROW_HEADINGS.includes(word));
  if (bands.length === 0 || nameColumn < 0 || rowColumn < 0)
    return fail({ code: 'shelf-not-a-shelf' });

  const rows: TableRow[] = [];
  for (const [i, line] of cells.slice(1).entries()) {
    const pigment = line[nameColumn] ?? '';
    const row = (line[rowColumn] ?? '').trim();
    if (pigment.trim() === '') return fail({ code: 'shelf-name-missing', row: i + 1 });
    if (row !== 'K' && row !== 'S') return fail({ code: 'shelf-row-unknown', pigment, row });
    const values: number[] = [];
    for (const { column, nm } of bands) {
      const cell = (line[column] ?? '').trim();
      if (cell === '') return fail({ code: 'shelf-band-missing', pigment, row, nm });
      const value = readNumber(cell);
      if (value === null) return fail({ code: 'shelf-band-text', pigment, row, nm, text: cell });
      values.push(value);
    }
    rows.push({ pigment, row, values });
  }
  if (rows.length === 0) return fail({ code: 'shelf-empty' });
  return ok({ comments, nms: bands.map(({ nm }) => nm), rows });
}

/** The most frequent separator of the heading; decimal commas make the other rows ambiguous. */
function delimiterOf(heading: string): string {
  const count = (mark: string) => heading.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}
