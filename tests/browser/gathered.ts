import { execFile } from 'node:child_process';
import { resolve } from 'node:path';
import { promisify } from 'node:util';
import { expect } from 'vitest';
import type { Entry } from '../../src/book/schema/record.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';

const KINGCUP = resolve(import.meta.dirname, '../../dist/cli/kingcup.js');

export interface GatheredColour {
  readonly lab: Lab;
  readonly share: number;
}

/** What the command line gathers from a photograph; the test's own server goes on meanwhile. */
export async function inNode(path: string): Promise<readonly GatheredColour[]> {
  const asked = promisify(execFile)(process.execPath, [KINGCUP, 'gather', path, '--json']);
  const { colours } = JSON.parse((await asked).stdout).photos[0];
  return colours.map(({ lab, share }: GatheredColour) => ({ lab, share }));
}

/** What is gathered in the record of a specimen; nothing yet is an empty list. */
export function gatheredOf(specimen: unknown): readonly GatheredColour[] {
  const { gathered } = (specimen as Entry<'specimen'>).body;
  return (gathered?.colours ?? []).map(({ lab, share }) => ({ lab, share }));
}

/** As many colours, each within CIEDE2000 1 of its twin, shares within 0.02; answers the greatest of both. */
export function expectAlike(
  found: readonly GatheredColour[],
  expected: readonly GatheredColour[],
): { readonly deltaE00: number; readonly share: number } {
  expect(found).toHaveLength(expected.length);
  const most = { deltaE00: 0, share: 0 };
  for (const { lab, share } of expected) {
    const [twin] = found
      .map((one) => ({ apart: deltaE00(one.lab, lab), share: Math.abs(one.share - share) }))
      .sort((x, y) => x.apart - y.apart);
    most.deltaE00 = Math.max(most.deltaE00, twin!.apart);
    most.share = Math.max(most.share, twin!.share);
  }
  expect(most.deltaE00).toBeLessThan(1);
  expect(most.share).toBeLessThan(0.02);
  return most;
}
