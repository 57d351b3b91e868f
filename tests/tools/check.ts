import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { findChromium } from './chromium.ts';
import { install, isCommand } from './debian.ts';
import { firefox } from './firefox.ts';
import { SECOND_TRIES, secondTries } from './second-tries.ts';
import { webkit } from './webkit.ts';

/**
 * `check.js`: format, lint, types, the build, and the tests that belong to `npm test`.
 * `check.js all`: all tests. `check.js soak`: all tests with their long counts.
 * Further words go to vitest. Closes with the second tries and with “N passed, N failed, N skipped”.
 */
const ROOT = resolve(import.meta.dirname, '../..');
const STEPS: readonly (readonly [name: string, ...command: string[]])[] = [
  ['format and lint', 'biome', 'check', '.'],
  ['types of everything', 'tsc', '-p', 'tsconfig.json'],
  ['types of the core', 'tsc', '-p', 'src/tsconfig.core.json'],
  ['types of the workers', 'tsc', '-p', 'workers/tsconfig.json'],
  ['build of the app', 'vite', 'build', '--logLevel', 'warn'],
];
const PROJECTS = ['unit', 'screens', 'published', 'smoke', 'story'];
const MORE_PROJECTS = ['simulation', 'browser'];

const [first, ...others] = process.argv.slice(2);
const mode = first === 'all' || first === 'soak' ? first : 'short';
const forVitest = mode === 'short' && first !== undefined ? [first, ...others] : others;
const count = { passed: 0, failed: 0, skipped: 0 };
const at = (name: string) => resolve(ROOT, 'node_modules/.bin', name);

for (const [name, tool, ...rest] of STEPS) {
  const { status } = spawnSync(at(tool!), rest, { cwd: ROOT, stdio: 'inherit' });
  console.log(`${status === 0 ? 'passed' : 'FAILED'}: ${name}`);
  if (status === 0) count.passed++;
  else count.failed++;
}

// All that is missing is installed in one go: the list of packages is fetched once.
const engines = mode === 'short' ? [] : [firefox, webkit];
const missing = [
  ...(findChromium() === null ? ['chromium'] : []),
  ...(mode === 'short' || isCommand('pdftotext') ? [] : ['poppler-utils']),
  ...engines.filter((engine) => !engine.isHere()).flatMap(({ packages }) => packages),
];
if (missing.length > 0 && !install(missing))
  console.log(
    `Without these some browser tests are skipped: ${missing.join(', ')}. On Debian: apt-get install ${missing.join(' ')}; KINGCUP_CHROMIUM names a Chromium that stands elsewhere.`,
  );

const folder = mkdtempSync(join(tmpdir(), 'kingcup-'));
const report = join(folder, 'tests.json');
const tries = join(folder, 'second-tries.txt');
const projects = mode === 'short' ? PROJECTS : [...PROJECTS, ...MORE_PROJECTS];
const { status } = spawnSync(
  at('vitest'),
  [
    'run',
    ...projects.flatMap((name) => ['--project', name]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...forVitest,
  ],
  {
    cwd: ROOT,
    stdio: 'inherit',
    env: {
      ...process.env,
      [SECOND_TRIES]: tries,
      ...(mode === 'soak' ? { KINGCUP_SOAK: '1' } : {}),
    },
  },
);
try {
  const tests = JSON.parse(readFileSync(report, 'utf8'));
  count.passed += tests.numPassedTests;
  count.failed += tests.numFailedTests;
  count.skipped += tests.numPendingTests + tests.numTodoTests;
} catch {
  console.log('The tests wrote no report.');
}
// A file that could not even be read fails the run without a failed test in it.
if (status !== 0 && count.failed === 0) count.failed++;
const again = secondTries(tries);
rmSync(folder, { recursive: true });

console.log(
  `second tries: ${again.length === 0 ? 'none' : `${again.length}: ${again.join('; ')}`}`,
);
console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
process.exitCode = count.failed === 0 ? 0 : 1;
