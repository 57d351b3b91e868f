import { type DifferenceWords, differenceWords } from '../colour/change-words.ts';
import { deltaE00 } from '../colour/difference.ts';
import { hexOf } from '../colour/gamut-mapping.ts';
import type { Lab } from '../colour/lab.ts';
import { rangeMapping } from '../harmony/shelf-range.ts';
import { mixFaultWords, shortfallWords } from '../messages/mixture-messages.ts';
import { findMixtures } from '../mixture/find-mixtures.ts';
import { glazingPigmentOf } from '../mixture/glazing.ts';
import { measuredRecipeOf } from '../mixture/measured-recipe.ts';
import { mixOptionsOf } from '../mixture/mixing-preferences.ts';
import type { MixOptions } from '../mixture/mixture-finder.ts';
import { mixturePropertiesOf } from '../mixture/mixture-properties.ts';
import type { Mixture, MixtureAnswer } from '../mixture/mixture-types.ts';
import { ofParts } from '../mixture/predict.ts';
import { PRESERVED_AXES } from '../mixture/search/target-metric.ts';
import { type MissingPigment, missingPigmentsFor, shortfallOf } from '../mixture/shortfall.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { wholeShelf } from '../pigment/starter-shelf.ts';
import { CliError } from './cli-error.ts';
import { readOptions } from './options.ts';
import type { Output } from './output.ts';
import { pileText } from './pile-text.ts';
import { labelsOf, WISH_HELP, WISH_OPTIONS, wishIn } from './preference-options.ts';
import { SHELF_HELP, SHELF_OPTIONS, shelfIn } from './shelf-option.ts';
import { TARGET_HELP, TARGET_OPTIONS, targetsIn } from './target-options.ts';

const HELP = `kingcup mix (--lab L,a,b | --hex #rrggbb | --harmony FILE)... [--shelf FILE]
            [--most 1-6] [--surface k1,k2] [--key] [--json] [further options]

Finds for each colour the nearest opaque mixture of the pigments on a shelf, in shares and in
whole parts, the simplest that is nearly as good, and alternatives. Pigments that spoil each
other never meet in one pile, and a pile has one white, as far as the pigments are known.

${TARGET_HELP}
${SHELF_HELP}
  --key            first bring the colours together into the shelf's range of light and dark
  --json           one JSON document instead of a table
${WISH_HELP}
  --keep WHAT      of a colour out of reach: nearest, hue (first) or lightness (first)
  --coarse         at most 12 parts in all, instead of 32
  --judge          also what to weigh: covering, hazards, fading, lamp-light, a slip of the knife
  --lacking        also which pigments not on the shelf would bring a colour nearer (slow)
`;

export async function mixVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('mix', args, {
    ...TARGET_OPTIONS,
    ...SHELF_OPTIONS,
    ...WISH_OPTIONS,
    key: { type: 'boolean' },
    keep: { type: 'string' },
    coarse: { type: 'boolean' },
    judge: { type: 'boolean' },
    lacking: { type: 'boolean' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  options.noFiles('mix');
  const targets = await targetsIn(options);
  const kept = options.value('keep') ?? 'nearest';
  const keep = PRESERVED_AXES.find((one) => one === kept);
  if (!keep) throw new CliError(`--keep takes nearest, hue or lightness, not “${kept}”.`);
  const shelf = await shelfIn(options, output);
  const wish = { ...wishIn(options, shelf), keep, coarse: options.has('coarse') };
  const how = mixOptionsOf(shelf, wish);

  const answers = answersFor(targets, shelf, { ...how, key: options.has('key') });
  const lacking = options.has('lacking')
    ? answers.map((one) => (one.reachable ? [] : missingFor(one.target, shelf, how)))
    : null;
  if (options.has('json')) {
    const judged = options.has('judge') ? shelf : null;
    const mixtures = answers.map((answer, i) => ({
      ...asJson(answer, judged),
      ...(lacking ? { lacking: lacking[i] } : {}),
    }));
    output.out(`${JSON.stringify({ mixtures })}\n`);
    return;
  }
  const notes = answers.map((answer, i) => [
    ...(options.has('judge') ? judgedLines(answer.simplest, shelf) : []),
    ...(lacking?.[i] ?? [])
      .slice(0, 3)
      .map(
        ({ label, deltaE00: away }) =>
          `  with ${label} on the shelf: difference ${away.toFixed(1)}`,
      ),
  ]);
  output.out(mixtureTable(answers, shelf, notes));
}

/** An answer, and the colour as it was seen where keying has moved the target. */
type Keyed = MixtureAnswer & { readonly seen?: Lab };

/** Mixtures for colours; with `key` the colours are first moved together into the shelf's range. @throws CliError */
export function answersFor(
  seen: readonly Lab[],
  shelf: Shelf,
  { key = false, ...how }: MixOptions & { key?: boolean },
): Keyed[] {
  const targets = key ? seen.map(rangeMapping(seen, shelf)) : seen;
  const found = findMixtures(targets, shelf, how);
  if (!found.ok) throw new CliError(mixFaultWords(found.fault, labelsOf(shelf)));
  return found.value.map((answer, i) => (key ? { ...answer, seen: seen[i]! } : answer));
}

function missingFor(target: Lab, shelf: Shelf, how: MixOptions): MissingPigment[] {
  const found = missingPigmentsFor(target, shelf, wholeShelf().paints, how);
  if (!found.ok) throw new CliError(mixFaultWords(found.fault, labelsOf(shelf)));
  return found.value;
}

/** The shape of design and DEVELOPERS.md: nothing that is only for screens. */
function asJson(answer: Keyed, judged: Shelf | null): object {
  const plain = (mixture: Mixture) => ({
    lab: mixture.lab,
    deltaE00: mixture.deltaE00,
    reachable: mixture.reachable,
    recipe: mixture.recipe,
    parts: mixture.parts,
    partsLab: mixture.partsLab,
    partsDeltaE00: mixture.partsDeltaE00,
    ...(mixture.letDown ? { letDown: mixture.letDown } : {}),
    ...(judged
      ? {
          judgement: mixturePropertiesOf(
            ofParts(measuredRecipeOf(mixture, judged).pigments),
            judged,
          ),
        }
      : {}),
  });
  return {
    target: answer.target,
    ...(answer.seen ? { seen: answer.seen, seenDeltaE00: deltaE00(answer.seen, answer.lab) } : {}),
    ...plain(answer),
    simplest: plain(answer.simplest),
    alternatives: answer.alternatives.map(plain),
  };
}

/** What to weigh a mixture by, a line each. */
function judgedLines(mixture: Mixture, shelf: Shelf): string[] {
  const { opacity, weakest, hazards, unknown, pairs, lampShift, slip, films } = mixturePropertiesOf(
    ofParts(measuredRecipeOf(mixture, shelf).pigments),
    shelf,
  );
  const named = labelsOf(shelf);
  return [
    `a brushed film is ${opacity}`,
    ...films.map((pigment) => `${named(pigment)} scatters next to nothing: alone it is a glaze`),
    ...(weakest
      ? [
          `weakest in light${weakest.ofAll ? '' : ' of those that are known'}: ${named(weakest.pigment)} (${weakest.class})`,
        ]
      : []),
    ...hazards.map(({ pigment, caution }) => `${named(pigment)}: ${caution}`),
    ...(unknown.length > 0
      ? [`how dangerous it is, is not known here: ${unknown.map(named).join(', ')}`]
      : []),
    ...pairs.map(({ pigments, why }) => `${pigments.map(named).join(' and ')}: ${why.join(' ')}`),
    `by lamp-light it moves by ${lampShift.toFixed(1)}`,
    `a tenth too much or too little of ${named(slip.pigment)} moves it by ${slip.deltaE00.toFixed(1)}`,
  ].map((line) => `    ${line}`);
}

const DIFFERENCE: Record<DifferenceWords, string> = {
  'none seen': 'no difference seen',
  'a trained eye sees it': 'a trained eye sees it',
  plain: 'plainly different',
};

/** Answers as plain text: the simplest recipe first, then the best where it is another. */
export function mixtureTable(
  answers: readonly Keyed[],
  shelf: Shelf,
  notes: readonly (readonly string[])[] = [],
): string {
  const named = labelsOf(shelf);
  const line = (mixture: Mixture) => {
    const lab = mixture.letDown?.lab ?? mixture.partsLab;
    const away = mixture.letDown?.deltaE00 ?? mixture.partsDeltaE00;
    return `${pileText(mixture, shelf)}  → ${hexOf(lab)}, difference ${away.toFixed(1)} (${DIFFERENCE[differenceWords(away)]})`;
  };
  return answers
    .map((answer, i) => {
      const target = answer.target.map((v) => v.toFixed(1)).join(', ');
      const moved = answer.seen
        ? `  (seen as ${hexOf(answer.seen)}, ${deltaE00(answer.seen, answer.target).toFixed(1)} away)`
        : '';
      const lines = [
        `${hexOf(answer.target)}  Lab ${target}${moved}`,
        `  simplest  ${line(answer.simplest)}`,
      ];
      if (pileText(answer.simplest, shelf) !== pileText(answer, shelf))
        lines.push(`  best      ${line(answer)}`);
      const film = glazingPigmentOf(
        ofParts(measuredRecipeOf(answer.simplest, shelf).pigments),
        shelf,
      );
      if (film)
        lines.push(
          `  ${named(film)} scatters next to nothing: this is a glaze, and covers no ground of another colour.`,
        );
      const shortfall = shortfallOf(answer.target, answer);
      if (shortfall)
        lines.push(
          `  Out of reach: the nearest mixture is ${shortfall.deltaE00.toFixed(1)} away. ${shortfallWords(shortfall)}`,
        );
      lines.push(...(notes[i] ?? []));
      return `${lines.join('\n')}\n`;
    })
    .join('\n');
}
