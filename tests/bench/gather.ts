import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { seededRandom } from '../../src/random.ts';
import { onPage } from './browser.ts';

const ROOT = resolve(import.meta.dirname, '../..');
/** A median of seven wandered by a fifth from run to run. */
const ROUNDS = 15;

/** One row of the report: a photograph, and how its gathering compares with decoding it alone. */
export interface GatherRow {
  readonly photo: string;
  readonly megabytes: number;
  readonly decodeMs: number;
  readonly wholeMs: number;
  /** The first photograph of a worker that has rehearsed. */
  readonly firstMs: number;
  readonly ratio: number;
  readonly heldUpMs: number;
  /** Most memory that the page's process held meanwhile, MB; null where the system does not tell. */
  readonly mostMb: number | null;
}

/** What the warm-up and the second thread gain for one photograph of 12 megapixels. */
export interface GainRow {
  readonly without: 'warm-up' | 'second thread';
  readonly firstMs: number;
  readonly wholeMs: number;
  readonly ratio: number;
}

/** Real photographs, where they stand beside the project: one whose colours are plain, and one of many leaves. */
const REAL = ['marigold', 'autumn-leaves'].flatMap((name) => {
  const path = resolve(ROOT, '../shared/photos', `${name}.jpg`);
  return existsSync(path) ? [{ name, path }] : [];
});

/** A picture enlarged to so many megapixels; noisy as from a small sensor, or smooth. */
async function photograph(path: string, megapixels: number, noisy: boolean): Promise<Buffer> {
  const { width: across = 1, height: down = 1 } = await sharp(path).metadata();
  const height = Math.round(Math.sqrt((megapixels * 1e6 * down) / across));
  const width = Math.round((height * across) / down);
  const { data } = await sharp(path)
    .resize(width, height)
    .raw()
    .toBuffer({ resolveWithObject: true });
  if (noisy) {
    const next = seededRandom(1);
    for (let i = 0; i < data.length; i++) data[i] = clamp(data[i]! + (next() - 0.5) * 36);
  }
  return sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
}
const clamp = (v: number): number => Math.max(0, Math.min(255, Math.round(v)));

const median = (values: number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Process ids of the pages of a browser. */
async function renderersOf(page: Page): Promise<number[]> {
  const session = await page.context().browser()!.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  return processInfo.flatMap(({ type, id }) => (type === 'renderer' ? [id] : []));
}

/** Linux keeps the most that a process held, and forgets it when told so (proc(5)). */
function forgetPeak(pid: number): void {
  try {
    writeFileSync(`/proc/${pid}/clear_refs`, '5');
  } catch {
    // Another system, or not allowed: then there is no figure, or one of the whole run.
  }
}

function peakOf(pids: readonly number[]): number | null {
  const peaks = pids.flatMap((pid) => {
    try {
      const found = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
      return found ? [Number(found[1]) / 1000] : [];
    } catch {
      return [];
    }
  });
  return peaks.length > 0 ? Math.max(...peaks) : null;
}

/** File to harmony in a worker of Chromium against decoding alone, in the same run. Null without a browser. */
export const benchGather = (): Promise<{
  readonly rows: GatherRow[];
  readonly gains: GainRow[];
} | null> => onPage(gatherOn);

async function gatherOn(page: Page, folder: string) {
  const sample = resolve(ROOT, 'samples/jay-feather.jpg');
  const photos: [name: string, path: string, megapixels: number, noisy: boolean][] = [
    ['smooth, 1 MP', sample, 1, false],
    ['smooth, 3 MP', sample, 3, false],
    ['smooth, 12 MP', sample, 12, false],
    ['noisy, 12 MP', sample, 12, true],
    ...REAL.map(({ name, path }): [string, string, number, boolean] => [
      `${name}, 12 MP`,
      path,
      12,
      false,
    ]),
    ['smooth, 48 MP', sample, 48, false],
  ];
  const sizes = new Map<string, number>();
  for (const [i, [name, path, megapixels, noisy]] of photos.entries()) {
    const bytes = await photograph(path, megapixels, noisy);
    sizes.set(name, bytes.length / 1e6);
    writeFileSync(join(folder, `${i}.jpg`), bytes);
  }
  const rows: GatherRow[] = [];
  for (const [i, [photo]] of photos.entries()) {
    const pids = await renderersOf(page);
    for (const pid of pids) forgetPeak(pid);
    const { decode, whole, firstMs, heldUpMs } = await page.evaluate(
      ([path, rounds]) => window.timePhoto(path, rounds),
      [`${i}.jpg`, ROUNDS] as const,
    );
    const [decodeMs, wholeMs] = [median(decode), median(whole)];
    rows.push({
      photo,
      megabytes: sizes.get(photo)!,
      decodeMs,
      wholeMs,
      firstMs,
      ratio: wholeMs / decodeMs,
      heldUpMs,
      mostMb: peakOf(pids),
    });
  }
  const smooth = photos.findIndex(([name]) => name === 'smooth, 12 MP');
  const gains: GainRow[] = [];
  for (const without of ['warm-up', 'second thread'] as const) {
    const { decode, whole, firstMs } = await page.evaluate(
      ([path, rounds, part]) => window.timePhoto(path, rounds, part),
      [`${smooth}.jpg`, ROUNDS, without] as const,
    );
    const wholeMs = median(whole);
    gains.push({ without, firstMs, wholeMs, ratio: wholeMs / median(decode) });
  }
  return { rows, gains };
}
