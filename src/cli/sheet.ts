import { sheetPaletteMarkup } from '../drawing/palette-markup.ts';
import { plainNumber } from '../number-format.ts';
import { cautionWords } from '../sheet/cautions.ts';
import { MIXING_WORDS } from '../sheet/mixing-steps.ts';
import { type MorningSheet, sheetOf } from '../sheet/morning-sheet.ts';
import { sheetDocument, sheetPage } from '../sheet/page-html.ts';
import sheetStyle from '../sheet/sheet.css?raw';
import { CliError } from './cli-error.ts';
import { readOptions } from './options.ts';
import type { Output } from './output.ts';
import { chosenPalettes, DAY_HELP, plannedDay } from './palette.ts';

const HELP = `kingcup sheet DAY.json [--shelf FILE] [--palette N] [--json | --html]

Writes the morning sheets of a day, one for each palette: what to prepare, how much, in which
order, what to mind.

  --shelf FILE   the paints to mix with (without it: the starter shelf, nothing of it counted)
  --palette N    only the sheet of that palette
  --json         one JSON document
  --html         one page a palette, for A4 or Letter; print it from any browser

${DAY_HELP}`;

export async function sheetVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('sheet', args, {
    shelf: { type: 'string' },
    palette: { type: 'string' },
    json: { type: 'boolean' },
    html: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  if (options.has('json') && options.has('html'))
    throw new CliError('Choose one of --json and --html.');
  const { day, studio } = await plannedDay(options, output);
  const chosen = chosenPalettes(options, day);
  const sheets = chosen.map((at) => sheetOf(day, at, studio, plainNumber));
  if (options.has('json')) {
    output.out(`${JSON.stringify({ sheets })}\n`);
    return;
  }
  if (options.has('html')) {
    const pages = sheets.map((sheet, i) =>
      sheetPage(sheet, sheetPaletteMarkup(day.palettes[chosen[i]!]!, day), plainNumber),
    );
    output.out(sheetDocument(pages, `Morning sheet, ${sheets[0]!.day}`, sheetStyle));
    return;
  }
  output.out(sheets.map(sheetText).join('\n\n'));
}

function sheetText(sheet: MorningSheet): string {
  const block = (head: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', head, ...lines.map((line) => `  - ${line}`)];
  const prepare = sheet.prepare.flatMap(({ tools, rows }) => [
    `  ${tools}`,
    ...rows.map(
      ({ number, label, lot, act, cm3, weigh, oil }) =>
        `  ${String(number).padStart(2)}  ${label.padEnd(26)} ${weigh}${oil === null ? '' : ` + ${oil} oil`}${cm3 === null ? '' : ` (${cm3} cm³)`}, ${[act, lot].filter(Boolean).join(', ')}`,
    ),
  ]);
  const piles = sheet.piles.flatMap(({ name, cm3, laid, parts, steps, instead }) => [
    `  ${name}, ${cm3} cm³ (${laid})`,
    `      ${parts.map((part) => `${part.parts} ${part.label}${part.letDown ? ' let down' : ''}`).join(' + ')}`,
    ...[...steps, ...(instead === null ? [] : [instead])].map((step) => `      ${step}`),
  ]);
  return [
    `${sheet.title}: morning sheet ${sheet.number} of ${sheet.of}, ${sheet.day}`,
    ...(sheet.pupils ? ['Nothing toxic: pupils under age or pregnant people are here.'] : []),
    ...block('Use first', sheet.useFirst),
    '',
    'Prepare, in this order',
    ...prepare,
    ...sheet.prepareNotes.map((note) => `  ${note}`),
    '',
    'Piles',
    `  ${MIXING_WORDS}`,
    ...piles,
    ...block('Today', [...sheet.today, ...sheet.lacks]),
    ...block('Mind', sheet.mind),
    ...block('Cautions', sheet.cautions.map(cautionWords)),
    ...block(
      'Read and understood, each lot',
      sheet.acknowledge.map(
        ({ lot, person, date }) => `${person}, ${lot}: ${date === null ? '____' : `read ${date}`}`,
      ),
    ),
    ...block('At the end of the day', sheet.cleaning),
    ...block(
      'Always',
      sheet.always.map(({ head, words }) => `${head}. ${words}`),
    ),
    '',
  ].join('\n');
}
