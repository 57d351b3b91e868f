import { changeWords } from '../colour/change-words.ts';
import type { Lab } from '../colour/lab.ts';
import { addFaultWords, startAgainWords } from '../messages/mixture-messages.ts';
import type { Addition } from '../mixture/addition-search.ts';
import { correctPile, type PileCorrection } from '../mixture/correct-pile.ts';
import { constraintsOf } from '../mixture/mixing-preferences.ts';
import type { MixturePart } from '../mixture/mixture-types.ts';
import { plainNumber } from '../number-format.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { parseAmount, readOptions, wholeNumber } from './options.ts';
import type { Output } from './output.ts';
import { labelsOf, paintNamed, WISH_HELP, WISH_OPTIONS, wishIn } from './preference-options.ts';
import { SHELF_HELP, SHELF_OPTIONS, shelfIn } from './shelf-option.ts';
import { colourTyped, TARGET_OPTIONS, targetsIn } from './target-options.ts';

const HELP = `kingcup add (--lab L,a,b | --hex #rrggbb) --pile NAME=PARTS... --came-out L,a,b|#rrggbb
            [--volume CM3] [--further 1-5] [--shelf FILE] [--json] [further options]

A pile came out wrong: finds what to add to it, and how much, so that it comes nearest to the
colour wanted; and says when it is better to start again. Paint can only be added.

  --lab, --hex      the colour wanted, as in “kingcup mix”; --harmony where the file holds one
  --pile NAME=PARTS what went into the pile, by volume (once for each pigment)
  --came-out COLOUR the colour that the pile turned out to be: L,a,b or #rrggbb
  --volume CM3      how much of the pile there is; amounts are then given in cm³ as well
  --further N       at most so many pigments are added, 1 to 5 (3)
${SHELF_HELP}
  --json            one JSON document instead of plain text
${WISH_HELP}
`;

export async function addVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('add', args, {
    ...TARGET_OPTIONS,
    ...SHELF_OPTIONS,
    ...WISH_OPTIONS,
    pile: { type: 'string', multiple: true },
    'came-out': { type: 'string' },
    volume: { type: 'string' },
    further: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  options.noFiles('add');
  const [target, ...others] = await targetsIn(options);
  if (others.length > 0) throw new CliError('One pile is mended at a time: name one colour.');
  const seen = options.value('came-out');
  if (seen === undefined)
    throw new CliError('Say which colour the pile turned out to be: --came-out L,a,b or #rrggbb.');
  const cameOut = colourTyped('came-out', seen);
  const most = wholeNumber('further', options.value('further') ?? '3', 1, 5);
  const volume = options.value('volume');
  const cm3 = volume === undefined ? undefined : parseAmount('volume', volume);
  const shelf = await shelfIn(options, output);
  const parts = options.given
    .filter(({ name }) => name === 'pile')
    .map(({ value }) => partTyped(value, shelf));
  if (parts.length === 0)
    throw new CliError('Say what went into the pile: --pile NAME=PARTS, once for each pigment.');
  const found = correctPile(
    { parts, ...(cm3 === undefined ? {} : { cm3 }) },
    cameOut,
    target!,
    shelf,
    { most, constraints: constraintsOf(shelf, wishIn(options, shelf)) },
  );
  if (!found.ok) throw new CliError(addFaultWords(found.fault, labelsOf(shelf)));
  output.out(
    options.has('json')
      ? `${JSON.stringify({ addition: { target, cameOut, ...found.value } })}\n`
      : told(found.value, cameOut, target!, shelf),
  );
}

/** “Yellow ochre=2”; a name may hold the sign itself. @throws CliError */
function partTyped(text: string, shelf: Shelf): MixturePart {
  const at = text.lastIndexOf('=');
  if (at < 1)
    throw new CliError(
      `--pile takes a pigment and its parts, like “ultramarine=2”, not “${text}”.`,
    );
  return {
    pigment: paintNamed(text.slice(0, at), shelf),
    parts: parseAmount('pile', text.slice(at + 1)),
  };
}

function told(found: PileCorrection, cameOut: Lab, target: Lab, shelf: Shelf): string {
  const { now, options, slip, startAgain } = found;
  const named = labelsOf(shelf);
  if (options.length === 0 && startAgain === null && now <= 0.5)
    return `It is right as it is: difference ${now.toFixed(1)}. Add nothing.\n`;
  const part = ({ pigment, parts, cm3 }: Addition['add'][number]) =>
    `${parts.toFixed(2)} parts ${named(pigment)}${cm3 === null ? '' : ` (${cm3.toFixed(2)} cm³)`}`;
  return [
    `Now ${now.toFixed(1)} away; wanted is: ${changeWords(cameOut, target)}.\n`,
    slip === null
      ? ''
      : `It looks as if there were ${slip.factor.toFixed(2)} times as much ${named(slip.pigment)} in it as stated.\n`,
    ...options.map(
      ({ add, total, deltaE00: away }) =>
        `  add ${add.map(part).join(' + ')}: ${total.toFixed(2)} of the pile, then difference ${away.toFixed(1)}\n`,
    ),
    options.length === 0 ? 'Nothing added brings it nearer.\n' : '',
    startAgain === null ? '' : `${startAgainWords(startAgain, plainNumber)}\n`,
  ].join('');
}
