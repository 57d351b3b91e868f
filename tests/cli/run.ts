import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll } from 'vitest';
import { STOPPED } from '../../src/cli/cli-error.ts';
import { runCommand } from '../../src/cli/command.ts';
import { inThisThread } from '../../src/cli/gather.ts';

export const SAMPLES = resolve(import.meta.dirname, '../../samples');

/** What a command line wrote, and how it ended. */
export interface Outcome {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** A folder for the files of one test file, removed after its tests. Called outside any test. */
export function scratch(): string {
  const folder = mkdtempSync(join(tmpdir(), 'kingcup-cli-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Runs a command line from source, in this thread. @throws Error for a programmer's mistake in it */
export async function kingcup(...args: string[]): Promise<Outcome> {
  const written = { stdout: '', stderr: '' };
  const status = await runCommand(args, {
    out: (text) => {
      written.stdout += text;
    },
    err: (text) => {
      written.stderr += text;
    },
    openPool: inThisThread,
  });
  const outcome = { status, ...written };
  expectNoMistake(outcome);
  return outcome;
}

function expectNoMistake({ stderr }: Outcome): void {
  if (stderr.split('\n').some((line) => line.startsWith(STOPPED)))
    throw new Error(`not refused but broken: ${stderr}`);
}

/** One plain sentence or more, and no trace of the program's insides. */
export function expectRefusal(outcome: Outcome, sentence: RegExp): void {
  const { status, stdout, stderr } = outcome;
  if (status === 0) throw new Error(`it was accepted: ${stdout.slice(0, 200)}`);
  if (stdout !== '') throw new Error(`it wrote ${stdout.slice(0, 200)}`);
  expectNoMistake(outcome);
  if (!sentence.test(stderr)) throw new Error(`it said: ${stderr}`);
  if (/\n\s+at |node:internal|Error:/.test(stderr)) throw new Error(`a stack trace: ${stderr}`);
}
