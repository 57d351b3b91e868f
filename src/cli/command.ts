import { addVerb } from './add.ts';
import { CliError, exitCodeOf } from './cli-error.ts';
import { draperyVerb } from './drapery.ts';
import { fewestVerb } from './fewest.ts';
import { gatherVerb, type OpenPool } from './gather.ts';
import { mixVerb } from './mix.ts';
import type { Output } from './output.ts';
import { paletteVerb } from './palette.ts';
import { sheetVerb } from './sheet.ts';
import { shelfVerb } from './shelf.ts';
import { transposeVerb } from './transpose.ts';
import { varyVerb } from './vary.ts';

interface CommandIO extends Output {
  /** Where several photographs are gathered. */
  readonly openPool: OpenPool;
}

interface Verb {
  /** What it is for, in a line of the help. */
  readonly about: string;
  readonly act: (args: readonly string[], io: CommandIO) => Promise<void>;
}

const VERBS: Record<string, Verb> = {
  gather: {
    about: 'the harmony of a photograph',
    act: (args, io) => gatherVerb(args, io, io.openPool),
  },
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

/**
 * Runs one command line.
 * @param args what stands behind the program's name: the verb, then its options and files
 * @returns the exit code: 1 where a sentence on standard error says what is wrong
 */
export function runCommand(args: readonly string[], io: CommandIO): Promise<0 | 1> {
  return exitCodeOf(async () => {
    const [verb, ...rest] = args;
    if (verb === undefined || verb === '--help' || verb === 'help' || verb === '-h') {
      io.out(HELP);
      return;
    }
    const found = Object.hasOwn(VERBS, verb) ? VERBS[verb] : undefined;
    if (!found) throw new CliError(`Kingcup has no verb “${verb}”. “kingcup --help” lists them.`);
    await found.act(rest, io);
  }, io);
}
