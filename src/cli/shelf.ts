import { basename } from 'node:path';
import { hexOf } from '../colour/gamut-mapping.ts';
import type { Lab } from '../colour/lab.ts';
import { shelfFaultWords, shelfRemarkWords } from '../messages/shelf-file-faults.ts';
import { plainNumber } from '../number-format.ts';
import { readShelf } from '../pigment/import/read-shelf.ts';
import { masstone } from '../pigment/masstone.ts';
import { pigmentOf } from '../pigment/pigment-facts.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { starterShelf, wholeShelf } from '../pigment/starter-shelf.ts';
import { CliError } from './cli-error.ts';
import { type Parsed, readOptions } from './options.ts';
import type { Output } from './output.ts';
import { pigmentJson, pigmentText, sought } from './pigment-text.ts';
import { readText } from './read-text.ts';
import { shelfCard, shelfRead } from './shelf-card.ts';
import { shelfCurves } from './shelf-curves.ts';
import { writeRemarks } from './shelf-option.ts';

const HELP = `kingcup shelf list [--shelf FILE | --all] [--json]
kingcup shelf show PIGMENT [--shelf FILE] [--json]
kingcup shelf check FILE [--json]
kingcup shelf card | read PHOTO | curves FILE ...

list    what stands on a shelf, from light to dark, with its hazards
show    one pigment: what it is, its colour alone and with white, its K and S, its figures and
        how each is known, its hazards and the usual caution
check   reads a shelf file and says what it holds, or what is wrong with it
card    draws a swatch card, to be printed and painted with your own paints
read    reads a photograph of that card and fits K and S of its paints
curves  the same from measured reflectances; each of these three has a --help of its own

  --shelf FILE  a shelf: Kingcup's JSON, or CSV with rows of K and S (without it: the starter
                shelf; “show” then knows every pigment)
  --all         every pigment that Kingcup has K and S of
  --json        one JSON document instead of plain text
`;

/** What calibrates a shelf has options of its own. */
const CALIBRATE: Record<string, (args: readonly string[], output: Output) => Promise<void>> = {
  card: shelfCard,
  read: shelfRead,
  curves: shelfCurves,
};

export async function shelfVerb(args: readonly string[], output: Output): Promise<void> {
  const [first, ...others] = args;
  if (first !== undefined && Object.hasOwn(CALIBRATE, first))
    return CALIBRATE[first]!(others, output);
  const options = readOptions('shelf', args, {
    shelf: { type: 'string' },
    all: { type: 'boolean' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  const [act, ...rest] = options.files;
  switch (act) {
    case 'list':
      nothingAfter('list', rest, 0);
      return list(options, output);
    case 'show':
      nothingAfter('show', rest, 1);
      if (rest[0] === undefined) throw new CliError('Name a pigment: kingcup shelf show PIGMENT.');
      return show(rest[0], options, output);
    case 'check':
      nothingAfter('check', rest, 1);
      if (rest[0] === undefined) throw new CliError('Name a file: kingcup shelf check FILE.');
      if (options.has('shelf') || options.has('all'))
        throw new CliError('“shelf check” takes the file itself: kingcup shelf check FILE.');
      return check(rest[0], options, output);
    default:
      throw new CliError(
        act === undefined
          ? 'Say what to do with the shelf: list, show PIGMENT, check FILE, card, read PHOTO or curves FILE.'
          : `The shelf has no “${act}”. “kingcup shelf --help” lists what it has.`,
      );
  }
}

function nothingAfter(act: string, rest: readonly string[], most: number): void {
  const stray = rest[most];
  if (stray !== undefined)
    throw new CliError(
      `“${stray}” is one too many for “shelf ${act}”. A name with spaces needs quotes.`,
    );
}

async function list(options: Parsed, output: Output): Promise<void> {
  if (options.has('shelf') && options.has('all'))
    throw new CliError('--shelf and --all do not go together: choose one.');
  const path = options.value('shelf');
  const shelf =
    path === undefined ? (options.has('all') ? wholeShelf() : starterShelf()) : await read(path);
  writeRemarks(shelf, output);
  write(options, output, shelfJson(shelf), () => shelfText(shelf));
}

async function show(name: string, options: Parsed, output: Output): Promise<void> {
  const path = options.value('shelf');
  const shelf = path === undefined ? wholeShelf() : await read(path);
  writeRemarks(shelf, output);
  const found = sought(name, shelf, path === undefined);
  write(options, output, pigmentJson(found, shelf), () => pigmentText(found, shelf));
}

async function check(path: string, options: Parsed, output: Output): Promise<void> {
  const shelf = await read(path);
  write(
    options,
    output,
    { file: path, ...shelfJson(shelf) },
    () =>
      `${basename(path)} can be used as a shelf.\n${shelfText(shelf)}${shelf.remarks
        .map((each) => `${shelfRemarkWords(each, plainNumber)}\n`)
        .join('')}`,
  );
}

/** A shelf file. @throws CliError */
async function read(path: string): Promise<Shelf> {
  const result = readShelf(await readText(path), { name: path });
  if (!result.ok)
    throw new CliError(`${basename(path)}: ${shelfFaultWords(result.fault, plainNumber)}`);
  return result.value;
}

function write(options: Parsed, { out }: Output, document: object, text: () => string): void {
  out(options.has('json') ? `${JSON.stringify(document)}\n` : text());
}

/** A paint with its masstone and what is known of its hazards. */
interface Seen {
  readonly paint: ShelfPaint;
  readonly lab: Lab;
  readonly hazard: string | null;
}

const lightFirst = (shelf: Shelf): Seen[] =>
  shelf.paints
    .map((paint) => ({
      paint,
      lab: masstone(paint.paint, shelf.surface),
      hazard: pigmentOf(paint.pigment)?.hazard.level ?? null,
    }))
    .toSorted((p, q) => q.lab[0] - p.lab[0]);

function shelfJson(shelf: Shelf) {
  const { name, basis, surface, white, remarks } = shelf;
  return {
    name,
    basis,
    surface,
    white,
    paints: lightFirst(shelf).map(({ paint: { pigment, label }, lab, hazard }) => ({
      pigment,
      label,
      family: pigmentOf(pigment)?.family ?? null,
      lab,
      hex: hexOf(lab),
      hazard,
    })),
    remarks: remarks.map((remark) => shelfRemarkWords(remark, plainNumber)),
  };
}

const HAZARD_WORDS: Record<string, string> = {
  low: 'mild',
  caution: 'with caution',
  toxic: 'toxic',
  very_toxic: 'very toxic',
};

/** A shelf as a table of plain text. */
function shelfText(shelf: Shelf): string {
  const seen = lightFirst(shelf);
  const widest = Math.max(...seen.map(({ paint }) => paint.label.length));
  const rows = seen.map(({ paint: { pigment, label }, lab, hazard }) => {
    const words = [
      hazard === null ? 'hazards not known here' : HAZARD_WORDS[hazard],
      ...(pigment === shelf.white ? ["the studio's white"] : []),
      ...(pigment === label ? [] : [pigment]),
    ];
    const L = Math.round(lab[0]).toString().padStart(3);
    return `  ${label.padEnd(widest)}  ${hexOf(lab)}  L*${L}  ${words.join(', ')}\n`;
  });
  const count = seen.length === 1 ? '1 paint' : `${seen.length} paints`;
  return `${basename(shelf.name)}: ${count}\n${rows.join('')}`;
}
