/**
 * Character widths in thousandths of an em: common metrics of Helvetica, Arial and Liberation Sans
 * (figures from memory of the published font metrics; a test compares the line counts with a
 * browser). Characters not listed count as wide.
 */
const WIDTHS: Readonly<Record<number, string>> = {
  191: "'",
  222: 'ijl‘’',
  278: ' !,./:;I[]ft·',
  333: '()-r²³“”',
  389: '*',
  400: '°',
  500: 'cksvxyzJ',
  556: '0123456789?abdeghnopqu–_#$£µ',
  584: '+<>=~×',
  611: 'FTZ',
  667: '&ABEKPSVXY',
  722: 'CDHNRUw',
  778: 'GOQ',
  833: 'mM',
  889: '%',
  944: 'W',
  1000: '—@…',
};
const CHAR_WIDTHS = new Map(
  Object.entries(WIDTHS).flatMap(([width, letters]) =>
    [...letters].map((letter) => [letter, Number(width) / 1000] as const),
  ),
);
/** Width in em of a character that is not listed. */
const UNKNOWN_WIDTH = 0.84;
/** Accents do not widen a letter. */
const bare = (text: string) => text.normalize('NFD').replaceAll(/\p{Mn}/gu, '');
/** Width factors: bold type, and the tolerance for other sans-serif typefaces. */
const BOLD = 1.075;
const OTHER_FACE = 1.015;

/** A run of text in one style. */
export interface TextRun {
  readonly text: string;
  readonly bold?: boolean;
  /** Relative to the body size; default 1. */
  readonly size?: number;
}

/** Width of a text on one line, in em of the body size. */
export const widthOf = ({ text, bold = false, size = 1 }: TextRun): number =>
  [...bare(text)].reduce((sum, letter) => sum + (CHAR_WIDTHS.get(letter) ?? UNKNOWN_WIDTH), 0) *
  size *
  OTHER_FACE *
  (bold ? BOLD : 1);

/**
 * Number of lines of running text, broken between words as a browser does; a word wider than a line
 * is broken within.
 * @param width in em of the body size
 */
export function linesOf(runs: readonly TextRun[], width: number): number {
  let lines = 0;
  let used = Number.POSITIVE_INFINITY;
  let space = 0;
  for (const run of runs) {
    const gap = widthOf({ ...run, text: ' ' });
    for (const word of run.text.split(/(?<=-)|\s+/u).filter((piece) => piece !== '')) {
      const wide = widthOf({ ...run, text: word });
      if (used + space + wide <= width) used += space + wide;
      else {
        const over = Math.max(1, Math.ceil(wide / width));
        lines += over;
        used = wide - (over - 1) * width;
      }
      space = word.endsWith('-') ? 0 : gap;
    }
    space = gap;
  }
  return lines;
}
