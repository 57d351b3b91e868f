import { readFile } from 'node:fs/promises';
import { type DifferenceWords, differenceWords } from '../colour/change.ts';
import { deltaE00 } from '../colour/difference.ts';
import { hexOf } from '../colour/hex.ts';
import type { Lab } from '../colour/lab.ts';
import { labOfHex } from '../colour/rgb.ts';
import { keyOf } from '../harmony/key.ts';
import { mixFaultWords } from '../mixture/faults.ts';
import { findMixtures } from '../mixture/find.ts';
import type { Answer, Mixture } from '../mixture/mixture.ts';
import { shelfFaultWords } from '../pigment/fault.ts';
import { readShelf } from '../pigment/read.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { starterShelf } from '../pigment/starter.ts';
import { Plain } from './fault.ts';
import { numbers, readOptions, type Typed, wholeNumber } from './options.ts';

const HELP = `kingcup mix (--lab L,a,b | --hex #rrggbb | --harmony FILE)... [--shelf FILE]
            [--most 1-6] [--surface k1,k2] [--key] [--json]

Finds for each colour the nearest opaque mixture of the pigments on a shelf, in shares and in
whole parts, the simplest that is nearly as good, and alternatives.

  --lab L,a,b      a colour in CIELAB under D65 (L 0 to 100; a and b from -160 to 160)
  --hex #rrggbb    a colour of an sRGB screen
  --harmony FILE   all colours of what “gather --json” wrote
  --shelf FILE     a shelf: Kingcup's JSON, or CSV with rows of K and S (without it: the starter shelf)
  --most N         at most so many pigments in a mixture, 1 to 6 (4)
  --surface k1,k2  surface constants instead of the shelf's own (0,0 is none)
  --key            first bring the colours together into the shelf's range of light and dark
  --json           one JSON document instead of a table
`;

export async function mixVerb(args: readonly string[]): Promise<void> {
  const options = readOptions('mix', args, {
    lab: { type: 'string', multiple: true },
    hex: { type: 'string', multiple: true },
    harmony: { type: 'string', multiple: true },
    shelf: { type: 'string' },
    most: { type: 'string' },
    surface: { type: 'string' },
    key: { type: 'boolean' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    process.stdout.write(HELP);
    return;
  }
  if (options.files.length > 0)
    throw new Plain(`“${options.files[0]}” belongs to no option. “kingcup mix --help” lists them.`);
  const targets: Lab[] = [];
  for (const typed of options.given) targets.push(...(await targetsOf(typed)));
  if (targets.length === 0)
    throw new Plain('Name a colour: --lab L,a,b, --hex #rrggbb or --harmony FILE.');
  const most = wholeNumber('most', options.value('most') ?? '4', 1, 6);
  const shelf = await shelfOf(options.value('shelf'), options.value('surface'));
  for (const remark of shelf.remarks) process.stderr.write(`${remark}\n`);

  const answers = answersFor(targets, shelf, { most, key: options.has('key') });
  process.stdout.write(
    options.has('json')
      ? `${JSON.stringify({ mixtures: answers.map(asJson) })}\n`
      : mixtureTable(answers, shelf),
  );
}

/** An answer, and the colour as it was seen where keying has moved the target. */
export type Keyed = Answer & { readonly seen?: Lab };

/** Mixtures for colours; with `key` the colours are first moved together into the shelf's range. @throws Plain */
export function answersFor(
  seen: readonly Lab[],
  shelf: Shelf,
  { most = 4, key = false }: { most?: number; key?: boolean },
): Keyed[] {
  const targets = key ? seen.map(keyOf(seen, shelf)) : seen;
  const found = findMixtures(targets, shelf, { most });
  if (!found.ok) throw new Plain(mixFaultWords(found.fault));
  return found.value.map((answer, i) => (key ? { ...answer, seen: seen[i]! } : answer));
}

/** The shape of design and DEVELOPERS.md: nothing that is only for screens. */
function asJson(answer: Keyed): object {
  const plain = (mixture: Mixture) => ({
    lab: mixture.lab,
    deltaE00: mixture.deltaE00,
    reachable: mixture.reachable,
    recipe: mixture.recipe,
    parts: mixture.parts,
    partsLab: mixture.partsLab,
    partsDeltaE00: mixture.partsDeltaE00,
    ...(mixture.letDown ? { letDown: mixture.letDown } : {}),
  });
  return {
    target: answer.target,
    ...(answer.seen ? { seen: answer.seen, seenDeltaE00: deltaE00(answer.seen, answer.lab) } : {}),
    ...plain(answer),
    simplest: plain(answer.simplest),
    alternatives: answer.alternatives.map(plain),
  };
}

export async function targetsOf({ name, value }: Typed): Promise<Lab[]> {
  if (name === 'lab')
    return [checkedLab('lab', numbers('lab', value, 3, '62,18,34') as unknown as Lab)];
  if (name === 'hex') {
    if (!/^#?[0-9a-f]{6}$/i.test(value))
      throw new Plain(`--hex takes six hexadecimal digits like #a1b2c3, not “${value}”.`);
    return [labOfHex(value)];
  }
  return name === 'harmony' ? harmonyFile(value) : [];
}

export function checkedLab(where: string, lab: Lab): Lab {
  const [L, a, b] = lab;
  if (!(L >= 0 && L <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160))
    throw new Plain(
      `${where}: ${lab.join(', ')} is no colour of a surface. L goes from 0 to 100, a and b from -160 to 160.`,
    );
  return lab;
}

/** All colours of what `gather --json` wrote. @throws Plain */
async function harmonyFile(path: string): Promise<Lab[]> {
  const text = await readText(path);
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    throw new Plain(`${path} is not JSON. --harmony takes what “gather --json” wrote.`);
  }
  const photos = (document as { photos?: unknown } | null)?.photos;
  const labs: Lab[] = [];
  for (const photo of Array.isArray(photos) ? photos : []) {
    const colours = (photo as { colours?: unknown } | null)?.colours;
    for (const colour of Array.isArray(colours) ? colours : []) {
      const lab = (colour as { lab?: unknown } | null)?.lab;
      if (!Array.isArray(lab) || lab.length !== 3 || !lab.every(Number.isFinite))
        throw new Plain(`${path} holds a colour without three numbers in its “lab”.`);
      labs.push(checkedLab(path, lab as unknown as Lab));
    }
  }
  if (labs.length === 0)
    throw new Plain(`${path} holds no colours. --harmony takes what “gather --json” wrote.`);
  return labs;
}

/** A file's text. @throws Plain */
export async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch {
    throw new Plain(`${path} cannot be opened. Check its name and place.`);
  }
}

export async function shelfOf(
  path: string | undefined,
  surface: string | undefined,
): Promise<Shelf> {
  const constants = surface === undefined ? undefined : numbers('surface', surface, 2, '0.03,0.65');
  if (constants && !constants.every((v) => v >= 0 && v < 1))
    throw new Plain('--surface takes two numbers from 0 to below 1, like 0.03,0.65.');
  const override = constants && {
    k1: constants[0]!,
    k2: constants[1]!,
    specular: 'included' as const,
  };
  if (path === undefined) {
    const shelf = starterShelf();
    return override ? { ...shelf, surface: override } : shelf;
  }
  const read = readShelf(await readText(path), {
    name: path,
    ...(override ? { surface: override } : {}),
  });
  if (!read.ok) throw new Plain(`${path}: ${shelfFaultWords(read.fault)}`);
  return read.value;
}

const DIFFERENCE: Record<DifferenceWords, string> = {
  'none seen': 'no difference seen',
  'a trained eye sees it': 'a trained eye sees it',
  plain: 'plainly different',
};

/** Answers as plain text: the simplest recipe first, then the best where it is another. */
export function mixtureTable(answers: readonly Keyed[], shelf: Shelf): string {
  const label = new Map(shelf.paints.map(({ pigment, label }) => [pigment, label]));
  const named = (pigment: string) => label.get(pigment) ?? pigment;
  const plain = (mixture: Mixture) =>
    mixture.parts.map(({ pigment, parts }) => `${parts} ${named(pigment)}`).join(' + ');
  /** With let-downs where the mixture has them: they come nearer than any plain parts. */
  const parts = (mixture: Mixture) =>
    mixture.letDown
      ? `${mixture.letDown.parts
          .map(
            ({ pigment, parts, letDown }) =>
              `${parts} ${named(pigment)}${letDown ? ' let down' : ''}`,
          )
          .join(' + ')}  (${mixture.letDown.letDowns
          .map(
            ({ pigment, white, parts, whiteParts }) =>
              `${named(pigment)} let down: ${parts} to ${whiteParts} ${named(white)}`,
          )
          .join('; ')})`
      : plain(mixture);
  const line = (mixture: Mixture) => {
    const lab = mixture.letDown?.lab ?? mixture.partsLab;
    const away = mixture.letDown?.deltaE00 ?? mixture.partsDeltaE00;
    return `${parts(mixture)}  → ${hexOf(lab)}, difference ${away.toFixed(1)} (${DIFFERENCE[differenceWords(away)]})`;
  };
  return answers
    .map((answer) => {
      const target = answer.target.map((v) => v.toFixed(1)).join(', ');
      const moved = answer.seen
        ? `  (seen as ${hexOf(answer.seen)}, ${deltaE00(answer.seen, answer.target).toFixed(1)} away)`
        : '';
      const lines = [
        `${hexOf(answer.target)}  Lab ${target}${moved}`,
        `  simplest  ${line(answer.simplest)}`,
      ];
      if (parts(answer.simplest) !== parts(answer)) lines.push(`  best      ${line(answer)}`);
      if (!answer.reachable)
        lines.push(
          `  Out of reach of this shelf: the nearest mixture is ${answer.deltaE00.toFixed(1)} away.`,
        );
      return `${lines.join('\n')}\n`;
    })
    .join('\n');
}
