import { shelfFaultWords, shelfRemarkWords } from '../messages/shelf-file-faults.ts';
import { plainNumber } from '../number-format.ts';
import { readShelf } from '../pigment/import/read-shelf.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { starterShelf } from '../pigment/starter-shelf.ts';
import { CliError } from './cli-error.ts';
import { numbers, type Parsed } from './options.ts';
import type { Output } from './output.ts';
import { readText } from './read-text.ts';

/** The options that name a shelf, for {@link shelfIn}. */
export const SHELF_OPTIONS = {
  shelf: { type: 'string' },
  surface: { type: 'string' },
} as const;

/** What those options are, for a verb's help. */
export const SHELF_HELP = `  --shelf FILE     a shelf: Kingcup's JSON, or CSV with rows of K and S (without it: the starter shelf)
  --surface k1,k2  surface constants instead of the shelf's own (0,0 is none)`;

/** The shelf that was named, its remarks on standard error. @throws CliError */
export async function shelfIn({ value }: Parsed, output: Output): Promise<Shelf> {
  const shelf = await shelfOf(value('shelf'), value('surface'));
  writeRemarks(shelf, output);
  return shelf;
}

/** Writes a shelf's remarks to standard error. */
export function writeRemarks({ remarks }: Shelf, { err }: Output): void {
  for (const remark of remarks) err(`${shelfRemarkWords(remark, plainNumber)}\n`);
}

/** A shelf file, or the starter shelf. @throws CliError */
export async function shelfOf(
  path: string | undefined,
  surface: string | undefined,
): Promise<Shelf> {
  const constants = surface === undefined ? undefined : numbers('surface', surface, 2, '0.03,0.65');
  if (constants && !constants.every((v) => v >= 0 && v < 1))
    throw new CliError('--surface takes two numbers from 0 to below 1, like 0.03,0.65.');
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
  if (!read.ok) throw new CliError(`${path}: ${shelfFaultWords(read.fault, plainNumber)}`);
  return read.value;
}
