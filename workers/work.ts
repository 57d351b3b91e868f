import { type WorkImage, WorkMaking, type WorkPart, workSize } from '../src/photo/work.ts';
import { average, type HalfJob, type Look } from './half.ts';
import { WarmWorker } from './jobs.ts';
import { frameOf, readStrips } from './strips.ts';

/** Smaller photographs are averaged before a second thread has its half. */
const HALVED = 2e6;
/** How long the second thread may take beyond the first, at the least. */
const LEAST_PATIENCE_MS = 500;

const second = new WarmWorker(
  () => new Worker(new URL('./half.worker.ts', import.meta.url), { type: 'module' }),
);
const hasSecond = navigator.hardwareConcurrency > 1 && typeof VideoFrame !== 'undefined';

/** Gets a second thread ready for a photograph that is about to be read. */
export function expectWork(): void {
  if (hasSecond) second.warm();
}

/**
 * The work image of a bitmap, and whether this browser perturbs what it lets a page read. Where a second
 * thread can look at the same memory it averages the lower half; the sums are exact, so nothing differs.
 */
export async function workOf(
  bitmap: ImageBitmap,
  isWide: boolean,
  look: Look,
): Promise<{ readonly work: WorkImage; readonly isPerturbed: boolean }> {
  const { width, height } = bitmap;
  const [, rows] = workSize(width, height);
  const isLarge = width * height >= HALVED && rows > 1;
  const frame = hasSecond && isLarge ? frameOf(bitmap, isWide) : null;
  if (!frame) {
    const making = new WorkMaking({ width, height, space: look.space }, look);
    const isPerturbed = await readStrips(bitmap, isWide, (data, lines, order) =>
      making.add(data, lines, order),
    );
    return { work: making.made(), isPerturbed };
  }
  try {
    return { work: await inHalves(frame, look, rows), isPerturbed: false };
  } finally {
    frame.close();
  }
}

async function inHalves(frame: VideoFrame, look: Look, rows: number): Promise<WorkImage> {
  const middle = rows >> 1;
  const lower = { frame, look, part: { from: middle, to: rows } };
  const giveUp = new AbortController();
  const theirs = second
    .run<HalfJob, WorkPart, never>(lower, { signal: giveUp.signal })
    .catch(() => null);
  const began = performance.now();
  const upper = await average({ frame, look, part: { from: 0, to: middle } });
  // Should it fail, or never answer, its half is done here.
  const patience = LEAST_PATIENCE_MS + 2 * (performance.now() - began);
  const late = setTimeout(() => giveUp.abort(), patience);
  const part = (await theirs) ?? (await average(lower)).part();
  clearTimeout(late);
  return upper.made([part]);
}
