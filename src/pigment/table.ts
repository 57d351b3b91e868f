import Papa from 'papaparse';
import { fail, ok, type Result } from '../result.ts';
import type { ShelfFault } from './fault.ts';
import { readNumber } from './number.ts';

/** One row of K or S, still on the file's own wavelengths. */
export interface TableRow {
  readonly pigment: string;
  readonly row: 'K' | 'S';
  readonly values: readonly number[];
}

/** What a CSV shelf holds before anything is made of it. */
export interface Table {
  /** What its comment lines say, by word: `surface`, `basis`, … */
  readonly comments: ReadonlyMap<string, string>;
  readonly nms: readonly number[];
  readonly rows: readonly TableRow[];
}

const COMMENT = /^\s*"?\s*#/;
const NAME_HEADINGS = ['pigment', 'colour', 'color', 'name', 'paint'];
const ROW_HEADINGS = ['coefficient', 'row', 'kind', 'quantity'];

/**
 * Reads a CSV of K and S: comment lines with #, one heading, then a K and an S row for each paint.
 * Names are kept letter for letter. Commas, semicolons or tabs part the cells; decimal commas,
 * quoted names, CRLF and a byte order mark are understood.
 */
export function readTable(text: string): Result<Table, ShelfFault> {
  const comments = new Map<string, string>();
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  for (const line of lines) {
    // A spreadsheet quotes such a line, or pads it with empty cells.
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

/** Whatever parts the heading most often parts the file: guessing from numbers trips over decimal commas. */
function delimiterOf(heading: string): string {
  const count = (mark: string) => heading.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}
