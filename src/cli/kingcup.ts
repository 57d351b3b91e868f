import { addVerb } from './add.ts';
import { CliError, run } from './cli-error.ts';
import { draperyVerb } from './drapery.ts';
import { fewestVerb } from './fewest.ts';
import { gatherVerb } from './gather.ts';
import { mixVerb } from './mix.ts';
import { paletteVerb } from './palette.ts';
import { sheetVerb } from './sheet.ts';
import { shelfVerb } from './shelf.ts';
import { transposeVerb } from './transpose.ts';
import { varyVerb } from './vary.ts';

/** What each verb is for, and the verb itself. */
const VERBS: Record<string, { about: string; act: (args: readonly string[]) => Promise<void> }> = {
  gather: { about: 'the harmony of a photograph', act: gatherVerb },
  mix: { about: 'mixtures of the pigments on a shelf for given colours', act: mixVerb },
  transpose: { about: 'colours moved together until a shelf mixes them', act: transposeVerb },
  fewest: { about: 'the fewest pigments that mix a harmony', act: fewestVerb },
  add: { about: 'what to add to a pile that came out wrong', act: addVerb },
  vary: { about: 'a colour made warmer, lighter, duller … with its pile', act: varyVerb },
  drapery: { about: 'a cloth as a ladder of folds, each with its pile', act: draperyVerb },
  palette: { about: 'the palettes for a day’s passages: seats, piles, amounts', act: paletteVerb },
  sheet: { about: 'the morning sheets of a day: what to prepare, what to mind', act: sheetVerb },
  shelf: {
    about: 'what stands on a shelf, one pigment in full, or whether a file is sound',
    act: shelfVerb,
  },
};

const HELP = `Kingcup: from what you saw to paint on the palette.

${Object.entries(VERBS)
  .map(([verb, { about }]) => `  ${verb.padEnd(10)} ${about}`)
  .join('\n')}

“kingcup VERB --help” says what each takes. From a checkout: npm run -s kingcup -- VERB …
`;

await run(async () => {
  const [verb, ...rest] = process.argv.slice(2);
  if (verb === undefined || verb === '--help' || verb === 'help' || verb === '-h') {
    process.stdout.write(HELP);
    return;
  }
  const found = Object.hasOwn(VERBS, verb) ? VERBS[verb] : undefined;
  if (!found) throw new CliError(`Kingcup has no verb “${verb}”. “kingcup --help” lists them.`);
  await found.act(rest);
});
