import { hexOf } from '../colour/gamut-mapping.ts';
import { type MixedVariant, type Origin, originOf, variantOf } from '../harmony/mixed-variant.ts';
import { type Relations, relationsOf } from '../harmony/roles-and-intervals.ts';
import {
  AMOUNTS,
  VARIANT_WAYS,
  type VariantAmount,
  type VariantWay,
} from '../harmony/variant-target.ts';
import { mixFaultWords } from '../messages/mixture-messages.ts';
import { pileChangeWords } from '../messages/pile-change-text.ts';
import {
  intervalWords,
  periodWords,
  roleWords,
  temperatureWords,
} from '../messages/relation-messages.ts';
import { limitWords } from '../messages/variant-limits.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import { mixtureOnly } from '../mixture/normalise.ts';
import { sentenceNamesOn } from '../pigment/sentence-names.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { coloursOf, type Given } from './colour-options.ts';
import { choice, readOptions, wholeNumber } from './options.ts';
import type { Output } from './output.ts';
import { pileText } from './pile-text.ts';
import { shelfIn } from './shelf-option.ts';

const HELP = `kingcup vary (--lab L,a,b | --hex #rrggbb | --harmony FILE)... [--way WAY]... [--amount AMOUNT]
            [--simple] [--shelf FILE] [--most 1-6] [--surface k1,k2] [--json]

Alters each colour, mixed from the shelf: from the pigments of its own pile where these serve.
Says what changes in the pile, and what the shelf cannot do. Of several colours it also tells how
they stand to one another and what period practice held of them.

  --way WAY        ${VARIANT_WAYS.join(', ')} (all of them); may be repeated
  --amount AMOUNT  ${AMOUNTS.join(', ')} (middle)
  --simple         start from the pile with the fewest pigments that is nearly as good
  --lab, --hex, --harmony, --shelf, --most, --surface  as for “kingcup mix”
  --json           one JSON document instead of a table
`;

export async function varyVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('vary', args, {
    lab: { type: 'string', multiple: true },
    hex: { type: 'string', multiple: true },
    harmony: { type: 'string', multiple: true },
    way: { type: 'string', multiple: true },
    amount: { type: 'string' },
    simple: { type: 'boolean' },
    shelf: { type: 'string' },
    most: { type: 'string' },
    surface: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  if (options.files.length > 0)
    throw new CliError(
      `“${options.files[0]}” belongs to no option. “kingcup vary --help” lists them.`,
    );
  const typed = options.given.filter(({ name }) => name === 'way');
  const ways =
    typed.length > 0 ? typed.map(({ value }) => choice('way', value, VARIANT_WAYS)) : VARIANT_WAYS;
  const amount = choice('amount', options.value('amount') ?? 'middle', AMOUNTS);
  const most = wholeNumber('most', options.value('most') ?? '4', 1, 6);
  const colours = await coloursOf(options.given);
  if (colours.length === 0)
    throw new CliError('Name a colour: --lab L,a,b, --hex #rrggbb or --harmony FILE.');
  const shelf = await shelfIn(options, output);

  const simple = options.has('simple');
  const rows = colours.map((colour) => rowOf(colour, ways, amount, shelf, { most, simple }));
  const relations = colours.length > 1 ? relationsOf(colours) : null;
  output.out(
    options.has('json')
      ? `${JSON.stringify({ variants: rows.flatMap((row) => asJson(row, shelf)), relations: relations && told(relations, colours) })}\n`
      : `${rows.map((row) => table(row, shelf)).join('\n')}${relations ? `\n${story(relations, colours)}` : ''}`,
  );
}

/** One colour with its variants. */
interface Row {
  readonly colour: Given;
  readonly origin: Origin;
  readonly made: readonly MixedVariant[];
}

function rowOf(
  colour: Given,
  ways: readonly VariantWay[],
  amount: VariantAmount,
  shelf: Shelf,
  { most, simple }: { most: number; simple: boolean },
): Row {
  const origin = originOf(colour.lab, shelf, { most, simple });
  if (!origin.ok) throw new CliError(mixFaultWords(origin.fault));
  const made = ways.map((way) => {
    const one = variantOf(origin.value, way, amount, shelf, { most });
    if (!one.ok) throw new CliError(mixFaultWords(one.fault));
    return one.value;
  });
  return { colour, origin: origin.value, made };
}

const asJson = ({ colour, origin, made }: Row, shelf: Shelf): object[] =>
  made.map((one) => ({
    target: colour.lab,
    origin: mixtureOnly(origin.mixture),
    way: one.way,
    amount: one.amount,
    wish: one.wish,
    stopped: one.stopped,
    granted: one.granted,
    short: one.short,
    samePigments: one.samePigments,
    pile: pileChangeWords(one.pile, sentenceNamesOn(shelf)),
    seen: one.seen,
    limit: limitWords(one),
    ...mixtureOnly(one.mixture),
  }));

function told(relations: Relations, colours: readonly Given[]): object {
  const { dominant, foil, accent, temperature, pairs, meanScore } = relations;
  return {
    ...{ dominant, foil, accent },
    temperature: { ...temperature, words: temperatureWords(temperature) },
    pairs: pairs.map((pair) => {
      const { of, beside, lightness, chroma, hue, score, period } = pair;
      const words = intervalWords(pair, colours);
      return {
        ...{ of, beside },
        lightness: { by: lightness, words: words.lightness },
        chroma: { by: chroma, words: words.chroma },
        hue: { by: hue.turnDeg, words: words.hue },
        ...{ score, period: period.map(sourced) },
      };
    }),
    meanScore,
    words: roleWords(relations, colours),
    colours: colours.map(({ name, lab, share }) => ({ name, lab, share })),
  };
}
const sourced = (row: Relations['pairs'][number]['period'][number]) => ({
  ...row,
  words: periodWords(row),
});

function table({ colour, origin, made }: Row, shelf: Shelf): string {
  const seen = ({ letDown, partsLab }: Mixture) => hexOf(letDown?.lab ?? partsLab);
  const line = (way: string, mixture: Mixture) =>
    `  ${way.padEnd(10)} ${seen(mixture)}  ${pileText(mixture, shelf)}`;
  const lines = [`${colour.name}  ${hexOf(colour.lab)}`, line('as it is', origin.mixture)];
  for (const one of made) {
    lines.push(line(one.way, one.mixture));
    if (one.granted !== 'nothing') {
      const from = one.samePigments ? ', of the same pigments' : '';
      lines.push(
        `             ${one.seen}; in the pile${from}: ${pileChangeWords(one.pile, sentenceNamesOn(shelf))}`,
      );
    }
    const limit = limitWords(one);
    if (limit) lines.push(`             ${limit}`);
  }
  return `${lines.join('\n')}\n`;
}

function story(relations: Relations, colours: readonly Given[]): string {
  const lines = [
    roleWords(relations, colours),
    `Its temperature: ${temperatureWords(relations.temperature)}.`,
  ];
  for (const pair of relations.pairs) {
    const { of, beside, score, period } = pair;
    const { lightness, chroma, hue } = intervalWords(pair, colours);
    lines.push(
      `${colours[of]!.name} beside ${colours[beside]!.name}: ${[lightness, chroma, hue].join('; ')}.`,
      `  two-colour score ${score.score.toFixed(2)} (Ou and Luo 2006; it rewards likeness, and harmony is not liking)`,
      ...period.map((row) => `  ${periodWords(row)}`),
    );
  }
  return `${lines.join('\n')}\n`;
}
