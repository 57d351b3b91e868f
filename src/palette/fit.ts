import { type Block, blocksOf } from './block.ts';
import type { SheetPile } from './heap.ts';
import { MIXING_WORDS } from './mixing.ts';
import { GUIDE_WORDS, laidWords, rowWords } from './phrase.ts';
import type { MorningSheet } from './sheet.ts';

/**
 * How closely a sheet is set, so that it fills one page and no more: sizes of sheet.css in points, of what is
 * read at the bench and of what is read once, from
 * a quiet morning to the fullest. Paper has no script to measure itself with, so lines are counted
 * here, on the generous side; a browser's own measurement holds this to account in the tests.
 */
export const SIZES_PT = [
  [10.6, 8.4],
  [10, 8],
  [9.6, 7.6],
  [9.2, 7.2],
  [8.8, 7],
  [8.2, 6.8],
  [7.4, 6.6],
] as const;
/** `over`: even the closest does not do, and the sheet runs on to a second page. */
export type Fit = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 'over';

/** How a sheet is set: its size, and which blocks follow the piles and which the drawing. */
export interface Setting {
  readonly fit: Fit;
  /** What it is reckoned to take, mm. */
  readonly height: number;
  readonly left: readonly Block[];
  readonly right: readonly Block[];
}

const PAGE_MM = 257;
const WIDTH_MM = 189;
export const COLUMN_MM = { left: 111, right: 74 } as const;
/** Columns of what to prepare, less their padding. */
const TABLE_MM = { name: 31.4, from: 22.4, figure: 34.4 } as const;
const MM_PER_PT = 25.4 / 72;
const LINE = 1.26;
/** Mean width of a letter in em; Arial's running text comes to 0.47, bold to 0.52. */
const LETTER = 0.458;
const BOLD = 0.54;
const SMALL = 0.86;

/** @param ratio height over width of the drawn palette */
export function fitOf(sheet: MorningSheet, ratio: number): Setting {
  let closest: Setting | null = null;
  for (const [fit, [pt, smallPt]] of SIZES_PT.entries()) {
    const { height, left, right } = settingAt(sheet, ratio, pt * MM_PER_PT, smallPt / pt);
    closest = { fit: fit as Fit, height, left, right };
    if (height <= PAGE_MM) return closest;
  }
  return { ...closest!, fit: 'over' };
}

/** @param em size of the body in mm @param small of what is read once, in em */
function settingAt(
  sheet: MorningSheet,
  ratio: number,
  em: number,
  small: number,
): { readonly height: number; readonly left: readonly Block[]; readonly right: readonly Block[] } {
  const lines = (text: string, width: number, size: number, letter = LETTER) =>
    text === '' ? 0 : Math.max(1, Math.ceil((text.length * letter * size * em) / width));
  /** Height of running words: size in em. */
  const words = (text: string, width: number, size: number) =>
    lines(text, width, size) * LINE * size * em;
  const head = 1.12 * 1.4 * em;

  const rows = sheet.prepare.flatMap((group) => group.rows);
  const prepare =
    head +
    sheet.prepare.length * (SMALL * LINE * em + 1.1) +
    rows.reduce((sum, row) => {
      const figure = row.weigh + (row.oil === null ? '' : ` + oil ${row.oil}`);
      const height = Math.max(
        lines(row.label, TABLE_MM.name, 1.04, BOLD) * 1.04,
        lines(rowWords(row), TABLE_MM.from, SMALL),
        lines(figure, TABLE_MM.figure, 1.04, BOLD) * 1.04,
      );
      return sum + height * LINE * em + 0.95;
    }, 0) +
    words(sheet.prepareNotes.join(' '), COLUMN_MM.left, SMALL) +
    0.6;

  const textMm = COLUMN_MM.left - 10 - 13 - 3.2;
  const partLines = ({ parts }: SheetPile) => {
    let count = 1;
    let used = 0;
    for (const { label, parts: of, letDown, cm3 } of parts) {
      const plain = `${of} ${label}${letDown ? ', let down' : ''}`.length * LETTER;
      const wide = (plain + (cm3 === null ? 0 : 1 + String(cm3).length) * LETTER * 0.85) * em;
      if (used > 0 && used + wide > textMm) {
        count++;
        used = 0;
      }
      used += wide + 2.4;
    }
    return count;
  };
  const pile = (one: SheetPile) =>
    2.2 +
    Math.max(
      13,
      lines(`${one.name} ${one.cm3} cm³`, textMm, 1.1, BOLD) * 1.1 * 1.2 * em +
        partLines(one) * LINE * em +
        one.steps.reduce((sum, step) => sum + words(step, textMm, 0.9), 0) +
        words(laidWords(one), textMm - 12, 0.82),
    );
  const column = {
    left:
      prepare +
      1.4 +
      head +
      words(MIXING_WORDS + GUIDE_WORDS, COLUMN_MM.left, SMALL) +
      sheet.piles.reduce((sum, one) => sum + pile(one), 0),
    right: COLUMN_MM.right * ratio + 3.2,
  };
  const heightIn = ({ lines: of }: Block, width: number) =>
    head +
    1 +
    of.reduce((sum, { runs }) => {
      const bold = runs.map((run) => run.bold).join(' ');
      const text = runs.map((run) => run.plain).join(' ');
      const equal = text + bold + bold.slice(0, Math.ceil(bold.length * 0.12));
      return sum + words(equal, width - 2.9, small) + 0.4;
    }, 0);
  const left: Block[] = [];
  const right: Block[] = [];
  // Each block goes where it ends higher.
  for (const block of blocksOf(sheet)) {
    const after = {
      left: column.left + heightIn(block, COLUMN_MM.left),
      right: column.right + heightIn(block, COLUMN_MM.right),
    };
    const side = after.left < after.right ? 'left' : 'right';
    column[side] = after[side];
    (side === 'left' ? left : right).push(block);
  }

  const always = Math.max(
    ...sheet.always.map((one, i) =>
      words(`${one.head}. ${one.words}`, i === 0 ? 62 : 56, Math.max(small, 0.84)),
    ),
  );
  const header = Math.max(2.1 * 1.1, LINE * (sheet.pupils ? 3 : 2)) * em + 1.8;
  const first =
    sheet.useFirst.length === 0
      ? 0
      : sheet.useFirst.reduce((sum, text) => sum + words(text, WIDTH_MM - 34, 1), 0) + 3.8;
  const closing = always + LINE * em + 8.6;
  const height = header + first + Math.max(column.left, column.right) + 3 + closing;
  return { height, left, right };
}
