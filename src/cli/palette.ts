import { hexOf } from '../colour/gamut-mapping.ts';
import { paletteMarkup } from '../drawing/palette-markup.ts';
import { cm3Words } from '../messages/amounts.ts';
import { mixFaultWords } from '../messages/mixture-messages.ts';
import { paletteFaultWords } from '../messages/palette-faults.ts';
import { leftOffWords } from '../messages/palette-messages.ts';
import { plainNumber } from '../number-format.ts';
import { readDay } from '../palette/day-file.ts';
import type { Day, PalettePlan } from '../palette/day-plan.ts';
import { fewestOfDay } from '../palette/fewest-of-day.ts';
import { labelIn, type Studio } from '../palette/passage.ts';
import { mixtureShelfOf } from '../pigment/mixing-shelf.ts';
import { starterShelf, starterStock } from '../pigment/starter-shelf.ts';
import type { Stock } from '../pigment/stock.ts';
import { planDay } from '../sheet/plan-day.ts';
import { joinWords, midSentence } from '../wording.ts';
import { CliError } from './cli-error.ts';
import { type Parsed, readOptions, wholeNumber } from './options.ts';
import type { Output } from './output.ts';
import { readText } from './read-text.ts';
import { shelfOf, writeRemarks } from './shelf-option.ts';

/** How a day's file looks, for both verbs that read one. */
export const DAY_HELP = `A day is JSON; samples/day.json is one to begin with.

  {"kind": "kingcup-day", "version": 1, "date": "2026-05-14",
   "passages": [{"name": "Water", "canvas": {"widthCm": 60, "heightCm": 45},
     "piles": [{"name": "still water", "parts": {"lead_white": 3, "ultramarine": 1},
                "share": 0.2, "film": "body colour"}]}]}

  parts      by volume of paste, under the shelf's names; null if the mixture was deleted
  share      of the canvas, or "cm2": an area
  film       imprimatura, dead colour, body colour, loaded, impasto, glaze or scumble;
             "filmUm", "coats", "spareOil", "tooth", "waste", "heapCm3" override what is usual
  palette    passages of one palette share it (at most three palettes a day)
  layers     coats that a passage has had: date, film, parts, and "felt" if a finger has tried
  stock      what stands on the shelf: pigment, form, lot, amount, unit; without it nothing is counted
  rules      seats, shape, hand, tooth, waste, heapCm3, edgeCm3, oil, pupils, people, acknowledged
  leftovers  name, parts, cm3, kept, date of what is left from days before
`;

const HELP = `kingcup palette DAY.json [--shelf FILE] [--palette N] [--fewest] [--json | --svg]

Lays the palettes for a day's passages: pigments in their seats, mixed piles with their amounts.

  --shelf FILE   the paints to mix with (without it: the starter shelf, nothing of it counted)
  --palette N    only that palette; --svg draws one, the first unless told
  --fewest       also what a shorter set of pigments would cost, pile by pile
  --json         one JSON document
  --svg          the palette as a drawing

${DAY_HELP}`;

export async function paletteVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('palette', args, {
    shelf: { type: 'string' },
    palette: { type: 'string' },
    fewest: { type: 'boolean' },
    json: { type: 'boolean' },
    svg: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  if (options.has('json') && options.has('svg'))
    throw new CliError('Choose one of --json and --svg.');
  const { day, studio } = await plannedDay(options, output);
  const chosen = chosenPalettes(options, day);
  if (options.has('svg')) {
    output.out(`${paletteMarkup(day.palettes[chosen[0]!]!, day, 720).html}\n`);
    return;
  }
  const fewest = options.has('fewest') ? fewestFor(day, studio) : null;
  output.out(
    options.has('json')
      ? `${JSON.stringify({ palettes: chosen.map((at) => paletteJson(day, at)), leftOff: day.leftOff, ...(fewest === null ? {} : { fewest }) })}\n`
      : [
          ...chosen.map((at) => paletteText(day.palettes[at]!, day, studio)),
          ...(day.leftOff.length > 0 ? [`${day.leftOff.map(leftOffWords).join('\n')}\n`] : []),
          ...(fewest === null ? [] : [fewestText(fewest, studio)]),
        ].join('\n'),
  );
}

/** Reads and plans the day that was named. @throws CliError */
export async function plannedDay(
  options: Parsed,
  output: Output,
): Promise<{ day: Day; studio: Studio }> {
  const [path, ...more] = options.files;
  if (path === undefined) throw new CliError("Name a day's file, such as samples/day.json.");
  if (more.length > 0) throw new CliError(`One day at a time: what is “${more[0]}”?`);
  const asked = readDay(await readText(path));
  if (!asked.ok) throw new CliError(`${path}: ${paletteFaultWords(asked.fault, plainNumber)}`);
  const studio = await studioOf(options.value('shelf'), asked.value.stock);
  writeRemarks(studio.shelf, output);
  const day = planDay(asked.value.asked, studio);
  if (!day.ok)
    throw new CliError(day.fault.map((one) => paletteFaultWords(one, plainNumber)).join('\n'));
  return { day: day.value, studio };
}

/** What the day is mixed from: the shelf that was named, else what the day counts, else the starter shelf. */
async function studioOf(path: string | undefined, stock: Stock | null): Promise<Studio> {
  if (path === undefined)
    return stock === null
      ? { shelf: starterShelf(), stock: starterStock() }
      : { shelf: mixtureShelfOf(stock), stock };
  return { shelf: await shelfOf(path, undefined), stock };
}

/** Which palettes were asked for, from 0. @throws CliError */
export function chosenPalettes(options: Parsed, day: Day): readonly number[] {
  const typed = options.value('palette');
  if (typed === undefined) return day.palettes.map((_, at) => at);
  return [wholeNumber('palette', typed, 1, day.palettes.length) - 1];
}

function paletteJson(day: Day, at: number): object {
  const { name, pigments, piles, mixed, offers } = day.palettes[at]!;
  return {
    name,
    shape: day.rules.shape,
    hand: day.rules.hand,
    seats: pigments.map(({ key, lab, inSeat, inMixtures, place }) => ({
      pigment: key,
      place,
      lab,
      hex: hexOf(lab),
      seatCm3: inSeat,
      mixedCm3: inMixtures,
    })),
    rows: mixed.map(({ pile }) => pile.name),
    piles: piles.map(({ pile, passage, lab, amount, swap }) => ({
      name: pile.name,
      passage: passage.name,
      lab,
      hex: hexOf(lab),
      film: pile.film,
      parts: pile.parts.map(({ pigment, parts }) => ({ pigment, parts })),
      netCm3: amount.net,
      needCm3: amount.need,
      prepareCm3: amount.prepare,
      pasteCm3: amount.paste,
      spareOilCm3: amount.spareOil,
      ...(swap === null ? {} : { insteadDeltaE00: swap.deltaE00 }),
    })),
    useFirst: offers.map(({ leftover, state, piles: for_ }) => ({
      name: leftover.name,
      cm3: leftover.cm3,
      state,
      piles: for_,
    })),
  };
}

function paletteText(palette: PalettePlan, { rules }: Day, studio: Studio): string {
  const seats = palette.pigments.map(
    ({ label, inSeat, supply }, i) =>
      `  ${String(i + 1).padStart(2)}  ${label.padEnd(28)} ${inSeat > 0 ? `${cm3Words(inSeat, plainNumber)} in its seat, ` : ''}${cm3Words(supply.cm3, plainNumber)} in all`,
  );
  const rows = palette.mixed.map(
    ({ pile, lab, amount }) =>
      `      ${pile.name.padEnd(28)} ${hexOf(lab)}  ${cm3Words(amount.prepare, plainNumber)}: ${pile.parts.map(({ pigment, parts }) => `${parts} ${midSentence(labelIn(studio, pigment))}`).join(' + ')}`,
  );
  const hand = `${rules.shape === 'oval' ? 'oval' : 'square-cornered'}, held in the ${rules.hand} hand`;
  return [
    `${palette.name} (${hand}), for ${joinWords(palette.passages.map(({ name }) => name))}`,
    ' From the thumb hole along the edge:',
    ...seats,
    ...(rows.length > 0 ? [' Mixed below, light to dark:', ...rows] : []),
    '',
  ].join('\n');
}

type DayFewest = Extract<ReturnType<typeof fewestOfDay>, { ok: true }>['value'];
function fewestFor(day: Day, studio: Studio): DayFewest {
  const found = fewestOfDay(day, studio);
  if (!found.ok)
    throw new CliError(mixFaultWords(found.fault, (pigment) => labelIn(studio, pigment)));
  return found.value;
}

function fewestText({ curve, piles }: DayFewest, studio: Studio): string {
  const lines = curve.map(({ count, pigments, deltaE00, worst }) => {
    const at = deltaE00.indexOf(worst);
    const names = joinWords(pigments.map((pigment) => midSentence(labelIn(studio, pigment))));
    return `  ${count}: ${names}; worst ${worst.toFixed(1)} (${piles[at]?.name ?? ''})`;
  });
  return `With fewer pigments:\n${lines.join('\n')}\n`;
}
