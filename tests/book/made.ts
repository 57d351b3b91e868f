import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import type { HarmonyBody } from '../../src/book/schema/harmony.ts';
import {
  type Book,
  type BookOptions,
  openBook,
  type StoredPicture,
} from '../../src/book/store/open-book.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { type GatheredColour, LADDER_STEPS } from '../../src/harmony/harmony.ts';
import type { Mixture } from '../../src/mixture/mixture-types.ts';
import type { Result } from '../../src/result.ts';

/** A fresh disk for one test. */
export function freshDisk(): IDBFactory {
  const disk = new IDBFactory();
  globalThis.indexedDB = disk;
  return disk;
}

export function must<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`fault: ${JSON.stringify(result.fault)}`);
  return result.value;
}

export const NOON = Date.UTC(2031, 4, 17, 12);

/** A book with a clock of its own: every look at it is a second later. */
export async function openMade(options: BookOptions = {}): Promise<Book> {
  let ms = NOON;
  return must(
    await openBook({
      now: () => {
        ms += 1000;
        return ms;
      },
      channel: null,
      ...options,
    }),
  );
}

/** Bytes that begin and end as a JPEG's do; all differ by seed. */
export function picture(seed: number, width = 64, height = 48): StoredPicture {
  const bytes = new Uint8Array(60 + seed);
  for (let i = 0; i < bytes.length; i++) bytes[i] = (i * 7 + seed * 31) % 251;
  bytes.set([0xff, 0xd8, 0xff, 0xda, 0, 2]);
  bytes.set([0xff, 0xd9], bytes.length - 2);
  return { bytes: bytes.buffer, type: 'image/jpeg', width, height };
}

export const colour = (name: string, lab: Lab, share: number): GatheredColour => ({
  name,
  lab,
  share,
  accent: share < 0.05,
  ladder: LADDER_STEPS.map((step, i) => ({
    step,
    lab: [lab[0] + 9 - 4 * i, lab[1], lab[2]] as const,
    share: 1 / 6,
  })),
});

export const mixtureOf = (lab: Lab, ...pigments: readonly string[]): Mixture => ({
  recipe: pigments.map((pigment) => ({ pigment, share: 1 / pigments.length })),
  lab,
  deltaE00: 0.4,
  reachable: true,
  parts: pigments.map((pigment, i) => ({ pigment, parts: i + 1 })),
  partsLab: [lab[0] + 0.3, lab[1], lab[2]],
  partsDeltaE00: 0.7,
});

export const harmonyBodyOf = (name: string, change: Partial<HarmonyBody> = {}): HarmonyBody => ({
  name,
  note: 'from the lane after rain',
  date: '2031-05-17',
  specimen: null,
  colours: [
    {
      ...colour('near green earth, deeper', [41, -12, 17], 0.62),
      mixture: mixtureOf([41.2, -12.1, 16.6], 'green-earth', 'raw-umber'),
    },
    {
      ...colour('near vermilion', [52, 55, 38], 0.03),
      asGathered: [51, 54, 40],
      altered: 'by eye',
    },
  ],
  keyed: true,
  shelf: 'starter',
  ...change,
});
