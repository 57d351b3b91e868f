import { execFile } from 'node:child_process';
import { resolve } from 'node:path';
import { promisify } from 'node:util';
import { expect } from 'vitest';
import type { SpecimenBody } from '../../src/book/specimen.ts';
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

/** Runs in a page of the app: the contents of an entry as they are on disk. */
export async function recordIn(id: string): Promise<unknown> {
  const book = await new Promise<IDBDatabase>((done, failed) => {
    const asked = indexedDB.open('studio-book');
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
  const record = await new Promise<{ body: unknown } | undefined>((done) => {
    const asked = book.transaction('records').objectStore('records').get(id);
    asked.onsuccess = () => done(asked.result);
  });
  book.close();
  return record?.body ?? null;
}

/** What is gathered in the contents of a specimen; nothing yet is an empty list. */
export function gatheredOf(specimen: unknown): readonly GatheredColour[] {
  const { gathered } = specimen as SpecimenBody;
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
