import type { Output } from './output.ts';

/** A sentence for the person at the command line; anything else that is thrown is a programmer's mistake. */
export class CliError extends Error {}

/** How the sentence for a programmer's mistake begins. */
export const STOPPED = 'Kingcup stopped:';

/** Runs a command to its exit code: 0, or 1 with a sentence on standard error; never a stack trace. */
export async function exitCodeOf(command: () => Promise<void>, { err }: Output): Promise<0 | 1> {
  try {
    await command();
    return 0;
  } catch (error) {
    const sentence =
      error instanceof CliError
        ? error.message
        : `${STOPPED} ${error instanceof Error ? error.message : String(error)}`;
    err(`${sentence}\n`);
    return 1;
  }
}
