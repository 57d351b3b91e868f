import { basename } from 'node:path';
import { cardPaintOf, photographedSwatches } from '../calibration/accept-calibration.ts';
import { drawCard, planOf } from '../calibration/card-svg.ts';
import { readChart } from '../calibration/colour-chart.ts';
import type { Point } from '../calibration/homography.ts';
import { type ReadCardOptions, readCard } from '../calibration/read-card.ts';
import {
  type CardPaint,
  type Paper,
  planCards,
  type SwatchCard,
} from '../calibration/swatch-card.ts';
import type { SwatchCardReading } from '../calibration/swatch-card-reading.ts';
import { USUAL_REFERENCES } from '../calibration/tone-correction.ts';
import { calibrationFaultWords, cardRemarkWords } from '../messages/calibration-messages.ts';
import { photoFaultWords, photographRemarkWords } from '../messages/photograph-messages.ts';
import { plainNumber } from '../number-format.ts';
import type { ShelfPaint } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { dayOf, written } from './dates-and-files.ts';
import { decodeFile } from './decode.ts';
import { numbers, type Parsed, readOptions } from './options.ts';
import type { Output } from './output.ts';
import { readText } from './read-text.ts';
import { fitOnto, shelfToCalibrate, writeFitted } from './shelf-fit.ts';

const CARD_HELP = `kingcup shelf card [--white ID] --paints ID,ID,... [--paper A4|letter] [--tints 4,16]
            [--shelf FILE] [--out FILE.svg] [--json]
kingcup shelf read PHOTO --card FILE.svg [--out SHELF.json] [--json]

card    draws the swatch card that is printed, painted and photographed: each paint alone and
        with the studio white. More paints than a page holds give several files.
read    reads a photograph of that card, fits K and S of its paints, and says how well

  --white ID       the studio white (the shelf's own)
  --paints A,B     ids or names of the shelf's paints
  --tints 4,16     parts of white to one of each paint (4)
  --card FILE      the SVG that was printed
  --shelf FILE     the shelf that the paints are of (without it: every pigment of Kingcup's)
  --unnamed        learn from the swatches alone, not from the curves that the shelf has
  --white-is L     lightness L* of the white reference (${USUAL_REFERENCES.white[0]})
  --grey-is L      lightness L* of the grey reference (${USUAL_REFERENCES.grey[0]})
  --corners x,y,x,y,x,y,x,y    the four marks in pixels, clockwise from the one with a pupil
  --chart FILE     values of a chart of 24 patches that lies in the picture, and
  --chart-at x,y,x,y,x,y,x,y   the centres of its four corner patches, in turn
  --date DAY       the day of the photograph, like 2026-05-01
  --out FILE       where the drawing, or the shelf with its new curves, is written
`;

/** shelf card: the drawing to print. */
export async function shelfCard(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('shelf', args, {
    white: { type: 'string' },
    paints: { type: 'string', multiple: true },
    paper: { type: 'string' },
    tints: { type: 'string' },
    shelf: { type: 'string' },
    out: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(CARD_HELP);
    return;
  }
  if (options.files[0] !== undefined)
    throw new CliError(
      `“${options.files[0]}” belongs to no option. Name the paints with --paints.`,
    );
  const { cards } = await cardsOf(options);
  const out = options.value('out');
  const drawn = cards.map((card) => ({ card, svg: drawCard(card) }));
  const named = (page: number) =>
    cards.length === 1 || out === undefined ? out : out.replace(/(\.svg)?$/i, `-${page}.svg`);
  for (const { card, svg } of drawn) {
    const file = named(card.page);
    if (file !== undefined) await written(file, svg);
  }
  if (options.has('json')) {
    const pages = drawn.map(({ card, svg }) => ({
      page: card.page,
      file: named(card.page) ?? null,
      places: card.places,
      ...(out === undefined ? { svg } : {}),
    }));
    output.out(`${JSON.stringify({ cards: pages })}\n`);
  } else if (out === undefined) {
    if (cards.length > 1)
      throw new CliError(`These paints need ${cards.length} pages: say where with --out FILE.svg.`);
    output.out(drawn[0]!.svg);
  } else {
    for (const { card } of drawn)
      output.out(
        `${named(card.page)}: ${card.places.length} places on ${card.paper === 'A4' ? 'A4' : 'letter'} paper. Print it at 100 %.\n`,
      );
  }
}

async function cardsOf(options: Parsed): Promise<{ cards: SwatchCard[] }> {
  const shelf = await shelfToCalibrate(options.value('shelf'));
  const asked = options.given
    .filter(({ name }) => name === 'paints')
    .flatMap(({ value }) => value.split(','))
    .map((name) => name.trim())
    .filter((name) => name !== '');
  if (asked.length === 0) throw new CliError('Name the paints to brush out: --paints ID,ID.');
  const toCard = ({ pigment, label }: ShelfPaint): CardPaint => cardPaintOf(pigment, label);
  const find = (name: string): ShelfPaint => {
    const found = shelf.paints.find(
      ({ pigment, label }) => pigment === name || label.toLowerCase() === name.toLowerCase(),
    );
    if (!found)
      throw new CliError(`“${name}” is not on this shelf. “kingcup shelf list” says what is.`);
    return found;
  };
  const whiteName = options.value('white') ?? shelf.white;
  if (whiteName === null) throw new CliError('This shelf has no white: name one with --white ID.');
  const white = find(whiteName);
  const paints = [...new Set(asked.map(find))].filter((paint) => paint !== white);
  const paper = paperOf(options.value('paper'));
  const tints = (options.value('tints') ?? '4').split(',').map(Number);
  if (!tints.every((tint) => tint > 0 && tint <= 100))
    throw new CliError(
      `--tints takes parts of white, each above 0 and up to 100, like 4,16, not “${options.value('tints')}”.`,
    );
  return { cards: planCards(toCard(white), paints.map(toCard), { paper, tints }) };
}

function paperOf(text: string | undefined): Paper {
  if (text === undefined || /^a4$/i.test(text)) return 'A4';
  if (/^letter$/i.test(text)) return 'letter';
  throw new CliError(`--paper takes A4 or letter, not “${text}”.`);
}

/** shelf read: a photographed card, fitted. */
export async function shelfRead(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('shelf', args, {
    card: { type: 'string' },
    shelf: { type: 'string' },
    unnamed: { type: 'boolean' },
    'white-is': { type: 'string' },
    'grey-is': { type: 'string' },
    corners: { type: 'string' },
    chart: { type: 'string' },
    'chart-at': { type: 'string' },
    date: { type: 'string' },
    out: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(CARD_HELP);
    return;
  }
  const [photo, stray] = options.files;
  if (photo === undefined) throw new CliError('Name the photograph: kingcup shelf read PHOTO.');
  if (stray !== undefined)
    throw new CliError(`“${stray}” is one too many: one photograph at a time.`);
  const cardFile = options.value('card');
  if (cardFile === undefined)
    throw new CliError('Name the card that was printed and photographed: --card FILE.svg.');
  const card = planOf(await readText(cardFile));
  if (card === null)
    throw new CliError(`${basename(cardFile)} is not a swatch card of “kingcup shelf card”.`);
  const decoded = await decodeFile(photo);
  if (!decoded.ok) throw new CliError(`${basename(photo)}: ${photoFaultWords(decoded.fault)}`);
  const { pixels, width } = decoded.value;
  const reading = readCard(pixels, card, await readingOptions(options, pixels.width / width));
  if (!reading.ok)
    throw new CliError(`${basename(photo)}: ${calibrationFaultWords(reading.fault, plainNumber)}`);
  const remarks = [
    ...decoded.value.remarks.map(photographRemarkWords),
    ...reading.value.remarks.map((remark) => cardRemarkWords(remark, plainNumber)),
  ];
  for (const remark of remarks) output.err(`${basename(photo)}: ${remark}\n`);

  const date = dayOf(options.value('date'));
  const fitted = fitOnto(
    await shelfToCalibrate(options.value('shelf')),
    card.white,
    photographedSwatches(reading.value, date ?? ''),
    { unnamed: options.has('unnamed'), date },
  );
  await writeFitted(fitted, options, output, { photo, reading: readingJson(reading.value) });
}

async function readingOptions(options: Parsed, scale: number): Promise<ReadCardOptions> {
  const lightness = (name: string, usual: number): readonly [number, number, number] => {
    const text = options.value(name);
    if (text === undefined) return [usual, 0, 0];
    const [L] = numbers(name, text, 1, '95');
    if (!(L! > 0 && L! <= 100)) throw new CliError(`--${name} takes a lightness from 0 to 100.`);
    return [L!, 0, 0];
  };
  const points = (name: string): Point[] | null => {
    const text = options.value(name);
    if (text === undefined) return null;
    const all = numbers(name, text, 8, '10,10,90,10,90,90,10,90');
    return [0, 2, 4, 6].map((at): Point => [all[at]! * scale, all[at + 1]! * scale]);
  };
  const corners = points('corners');
  const at = points('chart-at');
  const values = options.value('chart');
  if ((values === undefined) !== (at === null))
    throw new CliError(
      '--chart FILE and --chart-at go together: the values, and where the chart lies.',
    );
  let chart: ReadCardOptions['chart'];
  if (values !== undefined && at !== null) {
    const labs = readChart(await readText(values));
    if (!labs.ok)
      throw new CliError(`${basename(values)}: ${calibrationFaultWords(labs.fault, plainNumber)}`);
    chart = { labs: labs.value, corners: at };
  }
  return {
    references: {
      white: lightness('white-is', USUAL_REFERENCES.white[0]),
      grey: lightness('grey-is', USUAL_REFERENCES.grey[0]),
    },
    ...(corners ? { corners } : {}),
    ...(chart ? { chart } : {}),
  };
}

function readingJson({ places, references, remarks, ...rest }: SwatchCardReading) {
  const seen = ({ place, lab, kept, uneven }: SwatchCardReading['places'][number]) => ({
    number: place.number,
    label: place.label,
    lab,
    kept,
    uneven,
  });
  return {
    ...rest,
    places: places.map(seen),
    references: references.map(seen),
    remarks: remarks.map((remark) => cardRemarkWords(remark, plainNumber)),
  };
}
