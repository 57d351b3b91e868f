import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import type { Outcome } from '../cli/run.ts';
import { requireFresh } from '../tools/fresh.ts';

const ROOT = resolve(import.meta.dirname, '../..');
export const BUNDLE = resolve(ROOT, 'dist/cli/kingcup.js');
export const START = resolve(ROOT, 'dist/cli/start.js');

/** For a beforeEach: the bundle of today's source is there. */
export const freshBundle = (): void =>
  requireFresh(BUNDLE, [resolve(ROOT, 'src')], 'npm run bundle');

/** For a beforeEach: the app of today's source is there. */
export const freshApp = (): void =>
  requireFresh(
    resolve(ROOT, 'dist/app/index.html'),
    [resolve(ROOT, 'src'), resolve(ROOT, 'workers')],
    'npm run build',
  );

/** Runs the bundled command line in a process of its own. */
export function kingcup(args: readonly string[], env: NodeJS.ProcessEnv = {}): Outcome {
  const { status, stdout, stderr } = spawnSync(process.execPath, [BUNDLE, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}
