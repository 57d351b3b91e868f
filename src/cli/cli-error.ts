/** A sentence for the person at the command line; anything else that is thrown is a programmer's mistake. */
export class CliError extends Error {}

/** Ends the program with a sentence on standard error and exit code 1; never a stack trace. */
export async function run(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const sentence =
      error instanceof CliError
        ? error.message
        : `Kingcup stopped: ${error instanceof Error ? error.message : String(error)}`;
    process.stderr.write(`${sentence}\n`);
    process.exitCode = 1;
  }
}
