/** A change of one line in the code that a painter would notice, and who must notice it first. */
export interface Mutant {
  /** What the program then does wrong, in plain English. */
  readonly breaks: string;
  /** From the project's folder. */
  readonly file: string;
  /** Found exactly once in the file. */
  readonly before: string;
  readonly after: string;
  /** Test files that belong to `npm test`, from the project's folder. */
  readonly caughtBy: readonly string[];
}

/** The file's text with the change made; null where it is not found exactly once. */
export function changed(text: string, { before, after }: Mutant): string | null {
  const at = text.indexOf(before);
  if (at < 0 || text.indexOf(before, at + 1) >= 0) return null;
  return text.slice(0, at) + after + text.slice(at + before.length);
}

/** What is read of a report of vitest's. */
export interface Report {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

/** How a run of the catching tests ended. */
export type Verdict =
  | { readonly as: 'caught'; readonly by: string }
  /** Every test passed. */
  | { readonly as: 'survived' }
  /** No test failed, and none could: a file was not read, or there was no test in it. */
  | { readonly as: 'not run'; readonly why: string };

/** Only a failed test catches a change: a file that cannot be read proves nothing. */
export function verdictOf({ testResults }: Report): Verdict {
  const tests = testResults.flatMap(({ assertionResults }) => assertionResults);
  const failed = tests.find(({ status }) => status === 'failed');
  if (failed) return { as: 'caught', by: failed.fullName };
  const unread = testResults.find(({ status }) => status === 'failed');
  if (unread) return { as: 'not run', why: unread.message.split('\n')[0]! };
  if (!tests.some(({ status }) => status === 'passed'))
    return { as: 'not run', why: 'no test ran' };
  return { as: 'survived' };
}
