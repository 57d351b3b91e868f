import { dayWords } from '../palette/iso-date.ts';
import type { MorningSheet } from './morning-sheet.ts';

/**
 * A section of the sheet's columns. A line consists of runs, bold or plain; a mark puts a bar
 * beside it.
 */
export interface Block {
  readonly kind: 'today' | 'mind' | 'cautions' | 'cleaning' | 'read';
  readonly head: string;
  readonly lines: readonly {
    readonly runs: readonly { readonly bold: string; readonly plain: string }[];
    readonly mark: boolean;
  }[];
}

/** The sections after the piles and the drawing, in reading order; empty ones are omitted. */
export function blocksOf(sheet: MorningSheet): readonly Block[] {
  const plain = (words: string, mark = false) => ({ runs: [{ bold: '', plain: words }], mark });
  const blocks: Block[] = [
    {
      kind: 'today',
      head: 'Today',
      lines: [...sheet.today, ...sheet.lacks].map((words) => plain(words)),
    },
    { kind: 'mind', head: 'Mind', lines: sheet.mind.map((words) => plain(words)) },
    {
      kind: 'cautions',
      head: 'Cautions',
      lines: sheet.cautions.map(({ hazards, words, toxic }) => ({
        mark: toxic,
        runs: [
          ...(toxic ? [{ bold: 'Toxic.', plain: '' }] : []),
          ...hazards.map(({ names, words: hazard }) => ({ bold: `${names}:`, plain: hazard })),
          { bold: '', plain: words },
        ],
      })),
    },
    {
      kind: 'cleaning',
      head: 'At the end of the day',
      lines: sheet.cleaning.map((words) => plain(words)),
    },
    {
      kind: 'read',
      head: 'Data sheet read, each lot',
      lines: readLines(sheet),
    },
  ];
  return blocks.filter(({ lines }) => lines.length > 0);
}

/** One line per lot, one run per person; a bold name still needs initials. */
function readLines({ acknowledge }: MorningSheet): Block['lines'] {
  const lots = [...new Set(acknowledge.map(({ lot }) => lot))];
  return lots.map((lot) => ({
    mark: false,
    runs: [
      { bold: '', plain: `${lot}:` },
      ...acknowledge
        .filter((one) => one.lot === lot)
        .map(({ person, date }) =>
          date === null
            ? { bold: person, plain: '________' }
            : { bold: '', plain: `${person} ${dayWords(date)};` },
        ),
    ],
  }));
}
