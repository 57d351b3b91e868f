import { hexOf } from '../colour/gamut-mapping.ts';
import { bandNm, type Reflectance, spectrum } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { opaque } from '../optics/opaque.ts';
import { addSurface } from '../optics/surface.ts';
import { masstone } from '../pigment/masstone.ts';
import {
  type Figure,
  PIGMENTS,
  type PigmentFacts,
  PROVENANCE_WORDS,
  pigmentOf,
  standInsOf,
} from '../pigment/pigment-facts.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';

/** One pigment of a shelf, or one that only the handbooks' list holds. */
interface Sought {
  readonly id: string;
  readonly label: string;
  /** null: a pigment that nobody has K and S of here. */
  readonly paint: ShelfPaint | null;
  /** null: not on the handbooks' list. */
  readonly facts: PigmentFacts | null;
}

/** What a tint is made with: parts of white to one of the pigment. */
const TO_WHITE = 5;
const DEFERS =
  'This is the usual caution, not the whole of it: the safety data sheet of your own lot, local codes and licensed practice come first.';

const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

/**
 * The pigment that a name means: its id, what it is called, another of its names or its colour-index
 * name, in that order; capitals and accents do not count.
 * @param known whether the handbooks' list is looked through beside the shelf
 * @throws CliError where it means none, or several
 */
export function sought(name: string, shelf: Shelf, known: boolean): Sought {
  const all: Sought[] = shelf.paints.map((paint) => ({
    id: paint.pigment,
    label: paint.label,
    paint,
    facts: pigmentOf(paint.pigment),
  }));
  if (known)
    for (const facts of PIGMENTS)
      if (!all.some(({ id }) => id === facts.id))
        all.push({ id: facts.id, label: facts.name, paint: null, facts });
  const wanted = plain(name);
  const ways: ((one: Sought) => readonly string[])[] = [
    ({ id }) => [id],
    ({ label, facts }) => [label, facts?.name ?? label],
    ({ facts }) => [...(facts?.synonyms ?? []), facts?.colourIndex.name ?? ''],
  ];
  for (const way of ways) {
    const found = all.filter((one) =>
      way(one).some((each) => each !== '' && plain(each) === wanted),
    );
    if (found.length === 1) return found[0]!;
    if (found.length > 1)
      throw new CliError(
        `“${name}” can mean several pigments: ${found.map(({ id }) => id).join(', ')}. Name one of them.`,
      );
  }
  const near = all.filter(({ id, label }) => plain(`${id} ${label}`).includes(wanted));
  const hint =
    wanted === '' || near.length === 0
      ? `“kingcup shelf list${known ? ' --all' : ''}” names those that there are.`
      : `Did you mean ${near
          .slice(0, 4)
          .map(({ id }) => id)
          .join(', ')}?`;
  throw new CliError(`No pigment here is called “${name}”. ${hint}`);
}

/** Colour of a pigment let down with the shelf's white; null where there is no other paint for white. */
function tintOf({ paint }: Sought, { white, paints, surface }: Shelf): Lab | null {
  const with_ = paints.find(({ pigment }) => pigment === white);
  if (paint === null || with_ === undefined || with_ === paint) return null;
  const R: Reflectance = opaque([1, TO_WHITE], [paint.paint, with_.paint], spectrum());
  return labOf(addSurface(R, surface));
}

export function pigmentJson(one: Sought, shelf: Shelf): object {
  const { id, label, paint, facts } = one;
  const lab = paint && masstone(paint.paint, shelf.surface);
  const tint = tintOf(one, shelf);
  return {
    pigment: id,
    label,
    lab,
    hex: lab && hexOf(lab),
    tint: tint && { white: shelf.white, toWhite: TO_WHITE, lab: tint, hex: hexOf(tint) },
    curve: paint && {
      about: facts?.curve ?? null,
      wavelengths: Array.from(paint.paint.K, (_, band) => bandNm(band)),
      K: Array.from(paint.paint.K),
      S: Array.from(paint.paint.S),
    },
    facts: facts && {
      ...facts,
      curve: undefined,
      standIns: { ...facts.standIns, ids: standInsOf(id).map((each) => each.id) },
    },
    defersTo: DEFERS,
  };
}

export function pigmentText(one: Sought, shelf: Shelf): string {
  const { id, label, paint, facts } = one;
  const lines = [facts && label !== facts.name ? `${label} (${facts.name})` : label, ''];
  const say = (what: string, words: string | null | undefined) => {
    if (words) lines.push(`  ${what.padEnd(18)} ${words}`);
  };
  say('called here', id);
  if (facts) identity(facts, say);
  if (paint) {
    say('alone', colourText(masstone(paint.paint, shelf.surface)));
    const tint = tintOf(one, shelf);
    if (tint) say(`1 to ${TO_WHITE} of white`, colourText(tint));
  } else say('colour', 'not known here: it has no K and S, so nothing is mixed with it');
  if (facts) figures(facts, say);
  if (paint) say('K and S', facts?.curve ?? 'as the shelf file gives them');
  lines.push('', ...hazardText(facts), '');
  if (paint) lines.push(...curveText(paint), '');
  return lines.join('\n');
}

type Say = (what: string, words: string | null | undefined) => void;

function identity(facts: PigmentFacts, say: Say): void {
  const { synonyms, family, chemistry, colourIndex, hue, use, used } = facts;
  say('also called', synonyms.join(', '));
  say('family', family);
  say('chemistry', chemistry);
  if (colourIndex.name !== null)
    say('colour index', `${colourIndex.name}, ${colourIndex.number} [${colourIndex.status}]`);
  say('look', hue);
  say('use', use);
  say('in use', `${used.from} to ${used.to}`);
}

function figures(facts: PigmentFacts, say: Say): void {
  const { density, oil, index, opacity, strength, drying, lightfast, mixing } = facts;
  const figure = (f: Figure, unit: string) =>
    `${f.value} ${unit}${f.min === f.max ? '' : ` (${f.min} to ${f.max})`} [${f.status}] ${f.source}`;
  say('density', density && figure(density, 'g/cm3'));
  say('oil', oil && figure(oil, 'g for 100 g of pigment'));
  say('refractive index', index && `${index.min} to ${index.max} [${index.status}]`);
  say('hiding', opacity.word && `${opacity.word} [${opacity.status}]`);
  say('tinting strength', `${strength.word} [${strength.status}]`);
  say('drying', drying.word && `${drying.word} [${drying.status}]`);
  say('lightfast', `${lightfast.class} [${lightfast.status}] ${lightfast.note}`);
  say('mixing', `${mixing.note} [${mixing.status}]`);
  say('keep apart from', facts.avoid.map(named).join(', '));
  say('with care', facts.careWith.map(named).join(', '));
  say('stand-ins', facts.standIns.names.join(', '));
  const words = new Set([
    ...[density, oil, index].flatMap((f) => (f ? [f.status] : [])),
    ...[opacity, strength, drying, lightfast, mixing, facts.hazard].map(({ status }) => status),
  ]);
  for (const word of words) say(`[${word}]`, PROVENANCE_WORDS[word]);
}

const named = (id: string): string => pigmentOf(id)?.name ?? id;

const colourText = (lab: Lab): string =>
  `${hexOf(lab)}  Lab ${lab.map((v) => v.toFixed(1)).join(', ')}`;

function curveText({ paint: { K, S } }: ShelfPaint): string[] {
  const head = '  nm               K         S';
  return [
    head,
    ...Array.from(
      K,
      (k, band) =>
        `  ${bandNm(band)}       ${k.toPrecision(4).padStart(9)} ${S[band]!.toPrecision(4).padStart(9)}`,
    ),
  ];
}

function hazardText(facts: PigmentFacts | null): string[] {
  if (facts === null)
    return [
      'Hazards: this pigment is not on our list. Treat its dust as harmful until its data sheet says otherwise.',
      DEFERS,
    ];
  const { level, sentence, caution, status } = facts.hazard;
  return [`Hazard (${level.replace('_', ' ')}) [${status}]: ${sentence}`, caution, DEFERS];
}
