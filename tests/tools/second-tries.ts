import { appendFileSync, readFileSync } from 'node:fs';

/** Names the file in which a run of the tests notes its second tries, a line each. */
export const SECOND_TRIES = 'KINGCUP_SECOND_TRIES';

/** Notes that a check is tried a second time, so that the closing lines of the run can name it. */
export function noteSecondTry(check: string): void {
  console.log(`  second try: ${check}`);
  const file = process.env[SECOND_TRIES];
  if (file) appendFileSync(file, `${check.replaceAll('\n', ' ')}\n`);
}

/** The second tries noted in a file; none where it does not exist. */
export function secondTries(file: string): string[] {
  try {
    return readFileSync(file, 'utf8').split('\n').filter(Boolean);
  } catch {
    return [];
  }
}
