import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { findChromium } from './chromium.ts';
import { install, isCommand } from './debian.ts';
import { firefox } from './firefox.ts';
import { webkit } from './webkit.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const STEPS: readonly (readonly [name: string, ...command: string[]])[] = [
  ['format and lint', 'biome', 'check', '.'],
  ['types of everything', 'tsc', '-p', 'tsconfig.json'],
  ['types of the core', 'tsc', '-p', 'src/tsconfig.core.json'],
  ['types of the workers', 'tsc', '-p', 'workers/tsconfig.json'],
  ['build of the app', 'vite', 'build', '--logLevel', 'warn'],
];

const count = { passed: 0, failed: 0, skipped: 0 };
const at = (name: string) => resolve(ROOT, 'node_modules/.bin', name);

for (const [name, tool, ...rest] of STEPS) {
  const { status } = spawnSync(at(tool!), rest, { cwd: ROOT, stdio: 'inherit' });
  console.log(`${status === 0 ? 'passed' : 'FAILED'}: ${name}`);
  if (status === 0) count.passed++;
  else count.failed++;
}

// All that is missing comes in one go: the list of packages is fetched once.
const missing = [
  ...(findChromium() === null ? ['chromium'] : []),
  ...(isCommand('pdftotext') ? [] : ['poppler-utils']),
  ...[firefox, webkit].filter((engine) => !engine.isHere()).flatMap(({ packages }) => packages),
];
if (missing.length > 0 && !install(missing))
  console.log(
    `Without these some browser tests are skipped: ${missing.join(', ')}. On Debian: apt-get install ${missing.join(' ')}; KINGCUP_CHROMIUM names a Chromium that stands elsewhere.`,
  );

const folder = mkdtempSync(join(tmpdir(), 'kingcup-'));
const report = join(folder, 'tests.json');
const { status } = spawnSync(
  at('vitest'),
  [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...process.argv.slice(2),
  ],
  { cwd: ROOT, stdio: 'inherit' },
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
rmSync(folder, { recursive: true });

console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
process.exitCode = count.failed === 0 ? 0 : 1;
