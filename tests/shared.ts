import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, test } from 'vitest';

/** Reference data that stand beside the project, never in it. */
export const SHARED = resolve(import.meta.dirname, '../../shared');
export const hasShared = existsSync(resolve(SHARED, 'reference'));

// KINGCUP_MUST is set where a missing browser or missing reference data are a failure, not a skip.
if (!hasShared && process.env.KINGCUP_MUST === '1')
  throw new Error(`no reference data at ${SHARED}`);

/** A group of checks against the reference data; where they are absent, one visible skip. */
export function describeShared(name: string, checks: () => void): void {
  if (hasShared) describe(name, checks);
  else test.skip(`${name} (skipped: no ../shared beside the project)`, () => {});
}

export const readShared = (path: string): string => readFileSync(resolve(SHARED, path), 'utf8');
// biome-ignore lint/suspicious/noExplicitAny: check values of many shapes
export const readSharedJson = (path: string): any => JSON.parse(readShared(path));
