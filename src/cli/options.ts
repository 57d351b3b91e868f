import { type ParseArgsConfig, parseArgs } from 'node:util';
import { CliError } from './cli-error.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** An option as it was typed, in order. */
export interface Typed {
  readonly name: string;
  readonly value: string;
}

export interface Parsed {
  readonly files: readonly string[];
  /** Options with a value, in the order of the command line. */
  readonly given: readonly Typed[];
  readonly has: (name: string) => boolean;
  /** The last value of an option. */
  readonly value: (name: string) => string | undefined;
  /** For a verb that takes options only. @throws CliError where something belongs to none of them */
  readonly noFiles: (verb: string) => void;
}

/** Reads a verb's arguments. @throws CliError with a sentence about what was not understood */
export function readOptions(verb: string, args: readonly string[], options: Options): Parsed {
  try {
    const { positionals, tokens } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
      tokens: true,
    });
    const seen = tokens.filter((token) => token.kind === 'option');
    const given = seen.flatMap(({ name, value }) => (value === undefined ? [] : [{ name, value }]));
    return {
      files: positionals,
      given,
      has: (name) => seen.some((token) => token.name === name),
      value: (name) => given.findLast((token) => token.name === name)?.value,
      noFiles: (verb) => {
        if (positionals.length > 0)
          throw new CliError(
            `“${positionals[0]}” belongs to no option. “kingcup ${verb} --help” lists them.`,
          );
      },
    };
  } catch (error) {
    const reason =
      error instanceof Error ? error.message.split('\n')[0]!.split('. ')[0]! : String(error);
    throw new CliError(
      `${reason.replace(/\.$/, '')}. “kingcup ${verb} --help” lists what it takes.`,
    );
  }
}

/** A whole number in a range. @throws CliError */
export function wholeNumber(name: string, text: string, least: number, most: number): number {
  const n = Number(text);
  if (!/^\d+$/.test(text) || n < least || n > most)
    throw new CliError(`--${name} takes a whole number from ${least} to ${most}, not “${text}”.`);
  return n;
}

/** A number that is not negative. @throws CliError */
export function parseAmount(name: string, text: string): number {
  const n = Number(text);
  if (text.trim() === '' || !Number.isFinite(n) || n < 0)
    throw new CliError(`--${name} takes a number from 0 on, not “${text}”.`);
  return n;
}

/** Numbers with commas between them. @throws CliError */
export function numbers(name: string, text: string, count: number, example: string): number[] {
  const pieces = text.split(',').map((piece) => piece.trim());
  const values = pieces.map(Number);
  if (pieces.length !== count || pieces.includes('') || !values.every(Number.isFinite))
    throw new CliError(
      `--${name} takes ${count} numbers with commas, like ${example}, not “${text}”.`,
    );
  return values;
}

/** One of a few words. @throws CliError */
export function choice<T extends string>(name: string, text: string, words: readonly T[]): T {
  const found = words.find((word) => word === text);
  if (found === undefined)
    throw new CliError(`--${name} takes ${words.join(', ')}, not “${text}”.`);
  return found;
}
