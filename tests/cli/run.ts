import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const PROGRAM = resolve(import.meta.dirname, '../../dist/cli/kingcup.js');
export const SAMPLES = resolve(import.meta.dirname, '../../samples');

/** A folder for files of one test run. */
export const scratch = (): string => mkdtempSync(join(tmpdir(), 'kingcup-cli-'));

/** Runs the built command line. */
export function kingcup(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  return { status, stdout, stderr };
}

/** One plain sentence or more, and no trace of the program's insides. */
export function expectRefusal(
  { status, stdout, stderr }: ReturnType<typeof kingcup>,
  sentence: RegExp,
): void {
  if (status === 0) throw new Error(`it was accepted: ${stdout.slice(0, 200)}`);
  if (stdout !== '') throw new Error(`it wrote ${stdout.slice(0, 200)}`);
  if (!sentence.test(stderr)) throw new Error(`it said: ${stderr}`);
  if (/\n\s+at |node:internal|Error:/.test(stderr)) throw new Error(`a stack trace: ${stderr}`);
}
