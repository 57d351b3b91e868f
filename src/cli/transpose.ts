import { changeWords } from '../colour/change-words.ts';
import { hexOf } from '../colour/gamut-mapping.ts';
import { type MovedHarmony, type Transposition, transpose } from '../harmony/transpose.ts';
import { mixFaultWords } from '../messages/mixture-messages.ts';
import { moveWords } from '../messages/transposition-text.ts';
import { constraintsOf } from '../mixture/mixing-preferences.ts';
import { CliError } from './cli-error.ts';
import { readOptions } from './options.ts';
import type { Output } from './output.ts';
import { labelsOf, WISH_HELP, WISH_OPTIONS, wishIn } from './preference-options.ts';
import { SHELF_HELP, SHELF_OPTIONS, shelfIn } from './shelf-option.ts';
import { TARGET_HELP, TARGET_OPTIONS, targetsIn } from './target-options.ts';

const HELP = `kingcup transpose (--lab L,a,b | --hex #rrggbb | --harmony FILE)... [--shelf FILE]
                  [--json] [further options]

Moves colours that are out of reach all together, as little as possible, until the shelf mixes
every one of them: the range of light and dark, chroma, a small turn of temperature. Beside it
stand keying them, and matching each alone.

${TARGET_HELP}
${SHELF_HELP}
  --json           one JSON document instead of a table; “mix --harmony” takes it
${WISH_HELP}
`;

export async function transposeVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('transpose', args, {
    ...TARGET_OPTIONS,
    ...SHELF_OPTIONS,
    ...WISH_OPTIONS,
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  options.noFiles('transpose');
  const colours = await targetsIn(options);
  const shelf = await shelfIn(options, output);
  const wish = wishIn(options, shelf);
  const constraints = constraintsOf(shelf, wish);
  const found = transpose(colours, shelf, { most: wish.most, constraints });
  if (!found.ok) throw new CliError(mixFaultWords(found.fault, labelsOf(shelf)));
  output.out(
    options.has('json')
      ? `${JSON.stringify({ transposition: found.value })}\n`
      : table(found.value),
  );
}

function table({ transposed, keyed, alone }: Transposition): string {
  const colours = transposed.colours.map(
    ({ from, to, mixed, missed, moved }) =>
      `  ${hexOf(from)} → ${hexOf(to)}  ${changeWords(from, to)}; mixed ${hexOf(mixed)}, ${missed.toFixed(1)} from that and ${moved.toFixed(1)} from what was seen\n`,
  );
  const way = (name: string, { moved, reached, lost }: MovedHarmony) =>
    `  ${name.padEnd(12)}${moved.toFixed(1).padStart(5)}  ${lost.lightness.toFixed(1).padStart(5)}  ${lost.hueDeg.toFixed(1).padStart(5)}  ${lost.chroma.toFixed(2).padStart(5)}  ${reached ? 'every colour is reached' : 'not every colour is reached'}\n`;
  return [
    `${moveWords(transposed.move)}\n`,
    ...colours,
    'mean difference from what was seen, and what is lost of the intervals: L*, hue in degrees, log of chroma\n',
    way('transposed', transposed),
    way('keyed', keyed),
    way('each alone', alone),
  ].join('');
}
