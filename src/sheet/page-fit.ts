import { MIXING_WORDS } from './mixing-steps.ts';
import type { MorningSheet } from './morning-sheet.ts';
import { blanksOf, forWords, GUIDE_WORDS, laidWords, rowWords } from './sheet-phrases.ts';
import type { SheetPile } from './sheet-pile.ts';
import { linesOf, type TextRun, widthOf } from './text-metrics.ts';
import { type Block, blocksOf } from './text-sections.ts';

/**
 * Type sizes of a sheet in points, from a quiet morning to the fullest, so that it fills at most
 * one page. Printed HTML cannot measure itself, so this file counts lines and adds up the sizes in
 * sheet.css; a test compares the result with a browser's measurement.
 */
const SIZES_PT = [10.6, 10, 9.6, 9.2, 8.8, 8.4, 8, 7.5, 7] as const;
/**
 * Index of the smallest size that is readable at arm's length; a fuller palette is divided in two.
 */
export const SMALLEST_READABLE = 6;
/**
 * Index of a size. `over`: a single pile that does not fit even at the smallest; it continues on a
 * second page.
 */
type Fit = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 'over';

/**
 * Typesetting of a sheet: its size, and which blocks follow the piles (left) and the drawing
 * (right).
 */
interface PageSetting {
  readonly fit: Fit;
  /** Estimated height, mm. */
  readonly height: number;
  readonly left: readonly Block[];
  readonly right: readonly Block[];
}

/** Printable page of sheet.css, mm. */
const PAGE_MM = 257;
const WIDTH_MM = 189;
const COLUMN_MM = { left: 103, right: 82 } as const;
/** Widths in the table, mm: pigment with its source, and weight; then the text of a pile. */
const TABLE_MM = { name: 43.5, weigh: 21 } as const;
const PILE_MM = COLUMN_MM.left - 10 - 13 - 3.2;
const BOX_MM = (WIDTH_MM - 4.4 - 8) / 3;
const BLANK_MM = 13;
const MM_PER_PT = 25.4 / 72;
/** Line height in em. */
const LINE = 1.26;

/**
 * Chooses the largest type size at which a sheet fits its page.
 * @param ratio height over width of the drawn palette
 */
export function fitOf(sheet: MorningSheet, ratio: number): PageSetting {
  let closest: PageSetting | null = null;
  for (const [fit, pt] of SIZES_PT.entries()) {
    closest = { fit: fit as Fit, ...settingAt(sheet, ratio, pt) };
    if (closest.height <= PAGE_MM) return closest;
  }
  return { ...closest!, fit: 'over' };
}

function settingAt(sheet: MorningSheet, ratio: number, pt: number): Omit<PageSetting, 'fit'> {
  const em = pt * MM_PER_PT;
  /** Font sizes in em: of the columns' sections, and of the box that is on every sheet. */
  const small = Math.max(0.79, 7 / pt);
  const inBox = Math.max(0.8, 7.4 / pt);
  /** Height in mm of running text set `mm` wide; `size` in em. */
  const text = (runs: readonly TextRun[], mm: number, size = 1, line = LINE) =>
    linesOf(
      runs.map((run) => ({ ...run, size: (run.size ?? 1) * size })),
      mm / em,
    ) *
    line *
    size *
    em;
  const plain = (words: string, mm: number, size = 1) => text([{ text: words }], mm, size);
  const head = 1.12 * 1.4 * em;

  const top =
    Math.max(
      text([{ text: sheet.title, bold: true }], 128, 1.8, 1.1) + plain(forWords(sheet), 128),
      LINE * (sheet.pupils ? 3 : 2) * em,
    ) + 1.8;
  const first =
    sheet.useFirst.length === 0
      ? 0
      : sheet.useFirst.reduce((sum, words) => sum + plain(words, WIDTH_MM - 36), 0) + 4;

  const prepare =
    head +
    sheet.prepare.length * (0.86 * LINE * em + 1.1) +
    sheet.prepare
      .flatMap(({ rows }) => rows)
      .reduce((sum, row) => {
        const name = [
          { text: row.label, bold: true, size: 1.04 },
          { text: rowWords(row), size: 0.84 },
        ];
        return (
          sum +
          Math.max(
            text(name, TABLE_MM.name),
            text([{ text: row.weigh, bold: true, size: 1.04 }], TABLE_MM.weigh),
          ) *
            1.04 +
          0.95
        );
      }, 0) +
    plain(sheet.prepareNotes.join(' '), COLUMN_MM.left, 0.84) +
    0.6;
  // The blank for a date is not separated from its word.
  const blank = '_'.repeat(Math.ceil(BLANK_MM / (widthOf({ text: '_', size: 0.82 }) * em)));
  const pile = (one: SheetPile) =>
    2.2 +
    Math.max(
      13,
      text([{ text: one.name, bold: true }], PILE_MM - 24, 1.1, 1.2) +
        partLines(one, PILE_MM / em) * LINE * em +
        one.steps.reduce((sum, step) => sum + plain(step, PILE_MM, 0.9), 0) +
        plain(
          [laidWords(one), ...blanksOf(one).map((word) => word + blank)].join(' '),
          PILE_MM,
          0.82,
        ),
    );
  const column = {
    left:
      prepare +
      1.4 +
      head +
      plain(MIXING_WORDS + GUIDE_WORDS, COLUMN_MM.left, 0.84) +
      sheet.piles.reduce((sum, one) => sum + pile(one), 0),
    right: COLUMN_MM.right * ratio + 3.2,
  };
  const heightIn = ({ lines, kind }: Block, mm: number) =>
    head +
    1.8 +
    lines.reduce((sum, { runs, mark }) => {
      const words = runs.flatMap(({ bold, plain: after }) => [
        { text: bold, bold: true },
        { text: after },
      ]);
      return sum + text(words, mm - (mark ? 2.8 : 2.4), small) + (kind === 'cautions' ? 0.8 : 0.4);
    }, 0);
  const { left, right, longer } = shared(blocksOf(sheet), column, heightIn);
  const always = Math.max(
    ...sheet.always.map((one) =>
      text([{ text: `${one.head}.`, bold: true }, { text: one.words }], BOX_MM, inBox),
    ),
  );
  const closing = always + 4.6 + LINE * em + 3;
  const height = top + first + 1.2 + longer + closing;
  return { height, left, right };
}

/**
 * Distributes the blocks between the columns so that the longer one is as short as possible; each
 * column keeps their order. Tries every distribution.
 */
function shared(
  blocks: readonly Block[],
  start: { readonly left: number; readonly right: number },
  heightIn: (block: Block, mm: number) => number,
): Pick<PageSetting, 'left' | 'right'> & { readonly longer: number } {
  const heights = blocks.map((block) => ({
    left: heightIn(block, COLUMN_MM.left),
    right: heightIn(block, COLUMN_MM.right),
  }));
  let best = 0;
  let longer = Number.POSITIVE_INFINITY;
  for (let choice = 0; choice < 2 ** blocks.length; choice++) {
    const end = { ...start };
    for (const [i, height] of heights.entries()) {
      const side = choice & (1 << i) ? 'left' : 'right';
      end[side] += height[side];
    }
    const most = Math.max(end.left, end.right);
    if (most < longer) [longer, best] = [most, choice];
  }
  return {
    left: blocks.filter((_, i) => best & (1 << i)),
    right: blocks.filter((_, i) => !(best & (1 << i))),
    longer,
  };
}

/** Number of lines of a pile's parts; a part is never broken. @param width in em */
function partLines({ parts }: SheetPile, width: number): number {
  const gap = 0.64;
  let lines = 1;
  let used = 0;
  for (const { label, parts: count, letDown, cm3 } of parts) {
    const wide =
      widthOf({ text: String(count), bold: true }) +
      widthOf({ text: ` ${label}${letDown ? ', let down' : ''}` }) +
      (cm3 === null ? 0 : widthOf({ text: ` ${cm3}`, size: 0.84 }));
    if (used > 0 && used + gap + wide > width) {
      lines += Math.max(1, Math.ceil(wide / width));
      used = wide;
    } else used += wide + (used > 0 ? gap : 0);
  }
  return lines;
}
