import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';

/** All tests with their full numbers. */
const ROOT = resolve(import.meta.dirname, '../..');
const { status } = spawnSync(
  resolve(ROOT, 'node_modules/.bin/vitest'),
  ['run', ...process.argv.slice(2)],
  { cwd: ROOT, stdio: 'inherit', env: { ...process.env, KINGCUP_SOAK: '1' } },
);
process.exitCode = status ?? 1;
