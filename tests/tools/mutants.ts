import { type ChildProcess, spawn } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { MUTANTS } from '../mutants/list.ts';
import { changed, type Mutant, type Report, verdictOf } from '../mutants/mutant.ts';

/**
 * `mutants.js`: breaks one rule after another in a copy of the project, and runs the tests that must
 * catch it. A change that no test catches fails, and so does one that no longer applies. Words name
 * some of the rules: only those whose sentence holds one of them are tried.
 * Closes with “N passed, N failed, N skipped”: passed is caught, skipped is what only tests without
 * their reference data could catch.
 */
const ROOT = resolve(import.meta.dirname, '../..');
/** All of it; what has not begun by then fails. */
const MINUTES = 15;
/** Of all tests as they are; then of one change, which can make a loop that never ends. */
const FIRST_RUN_MINUTES = 5;
const ONE_RUN_MINUTES = 2;
/** Copied, because tests read beside themselves and one file at a time is changed; the rest is linked. */
const COPIED = ['src', 'tests', 'workers'];
const LEFT_OUT = ['.git', 'dist', 'node_modules'];
const LANES = Math.min(2, availableParallelism());

const words = process.argv.slice(2).map((word) => word.toLowerCase());
const mutants = MUTANTS.filter(
  ({ breaks }) => words.length === 0 || words.some((word) => breaks.toLowerCase().includes(word)),
);
const end = Date.now() + MINUTES * 60_000;
const count = { passed: 0, failed: 0, skipped: 0 };
const folder = mkdtempSync(join(tmpdir(), 'kingcup-mutants-'));
const running = new Set<ChildProcess>();
process.on('exit', () => {
  for (const tests of running) tests.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => process.exit(1));

/** A copy of the project with its packages and its reference data in their usual places. */
function copyOf(name: string): string {
  const copy = join(folder, name, 'kingcup');
  mkdirSync(copy, { recursive: true });
  for (const entry of readdirSync(ROOT, { withFileTypes: true })) {
    const [from, to] = [join(ROOT, entry.name), join(copy, entry.name)];
    if (LEFT_OUT.includes(entry.name)) continue;
    if (COPIED.includes(entry.name)) cpSync(from, to, { recursive: true });
    else if (entry.isDirectory()) symlinkSync(from, to);
    else copyFileSync(from, to);
  }
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  const shared = resolve(ROOT, '../shared');
  if (existsSync(shared)) symlinkSync(shared, join(folder, name, 'shared'));
  return copy;
}

/** Runs test files in a copy; null where they wrote no report in time. */
function run(
  copy: string,
  files: readonly string[],
  minutes: number,
  ...options: string[]
): Promise<Report | null> {
  const report = join(copy, '..', 'report.json');
  rmSync(report, { force: true });
  const tests = spawn(
    join(copy, 'node_modules/.bin/vitest'),
    [
      'run',
      ...['unit', 'screens', 'published'].flatMap((name) => ['--project', name]),
      '--reporter=json',
      `--outputFile=${report}`,
      ...options,
      ...files,
    ],
    { cwd: copy, stdio: 'ignore', timeout: minutes * 60_000, killSignal: 'SIGKILL' },
  );
  running.add(tests);
  return new Promise((done) => {
    tests.on('error', () => done(null));
    tests.on('close', () => {
      running.delete(tests);
      try {
        done(JSON.parse(readFileSync(report, 'utf8')));
      } catch {
        done(null);
      }
    });
  });
}

function tell(how: keyof typeof count, sentence: string): void {
  count[how]++;
  console.log(`${how === 'failed' ? 'FAILED' : how}: ${sentence}`);
}

/** Files of which no test runs here, changes or not. @throws Error where one fails or cannot be read */
async function skippedIn(copy: string): Promise<ReadonlySet<string>> {
  if (mutants.length === 0) throw new Error(`no rule is named by ${words.join(', ')}`);
  const files = [...new Set(mutants.flatMap(({ caughtBy }) => caughtBy))];
  const report = await run(copy, files, FIRST_RUN_MINUTES);
  if (report === null) throw new Error('the tests wrote no report');
  const skipped = new Set<string>();
  for (const file of files) {
    const testResults = report.testResults.filter(({ name }) => name.endsWith(`/${file}`));
    const verdict = verdictOf({ testResults });
    if (verdict.as === 'caught') throw new Error(`${file} fails as it is: ${verdict.by}`);
    const isSkipped =
      verdict.as === 'not run' && testResults.some(({ status }) => status === 'passed');
    if (isSkipped) skipped.add(file);
    else if (verdict.as === 'not run') throw new Error(`${file} does not run: ${verdict.why}`);
  }
  return skipped;
}

async function attempt(mutant: Mutant, copy: string, skipped: ReadonlySet<string>): Promise<void> {
  const { breaks, file, caughtBy } = mutant;
  if (Date.now() > end) return tell('failed', `${breaks} (not tried: ${MINUTES} minutes are over)`);
  const path = join(copy, file);
  const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
  const broken = changed(text, mutant);
  if (broken === null)
    return tell('failed', `${breaks} (no longer applies: not found once in ${file})`);
  const files = caughtBy.filter((one) => !skipped.has(one));
  if (files.length === 0) return tell('skipped', `${breaks} (its tests miss their reference data)`);
  writeFileSync(path, broken);
  // Each lane has a core of its own.
  const report = await run(copy, files, ONE_RUN_MINUTES, '--bail=1', '--maxWorkers=1');
  writeFileSync(path, text);
  if (report === null) return tell('failed', `${breaks} (the tests came to no end)`);
  const verdict = verdictOf(report);
  if (verdict.as === 'caught') return tell('passed', `${breaks} (caught by “${verdict.by}”)`);
  if (verdict.as === 'survived') return tell('failed', `${breaks} (survived ${files.join(', ')})`);
  tell('failed', `${breaks} (nothing ran: ${verdict.why})`);
}

const copies = Array.from({ length: LANES }, (_, i) => copyOf(`lane-${i + 1}`));
try {
  const skipped = await skippedIn(copies[0]!);
  const waiting = [...mutants];
  const lane = async (copy: string) => {
    for (let next = waiting.shift(); next; next = waiting.shift())
      await attempt(next, copy, skipped);
  };
  await Promise.all(copies.map(lane));
} catch (error) {
  console.log(`Nothing more was tried: ${error instanceof Error ? error.message : error}.`);
  count.failed = mutants.length - count.passed - count.skipped;
}
const seconds = Math.round((Date.now() - end) / 1000 + MINUTES * 60);
console.log(`${mutants.length} changes in ${Math.floor(seconds / 60)} min ${seconds % 60} s`);
console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
process.exitCode = count.failed === 0 && mutants.length > 0 ? 0 : 1;
