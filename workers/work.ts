import { type GatherFault, type GatherFromOptions, gatheringOf } from '../src/harmony/gather.ts';
import type { Gathered } from '../src/harmony/harmony.ts';
import { type TrialsWanted, trialsOf } from '../src/harmony/trial.ts';
import { type WorkImage, WorkMaking, type WorkPart, workSize } from '../src/photo/work.ts';
import type { Result } from '../src/result.ts';
import { average, type HalfJob, type Look } from './half.ts';
import { WarmWorker } from './jobs.ts';
import { frameOf, readStrips } from './strips.ts';

/** Smaller photographs are averaged before a second thread has its half. */
const HALVED = 2e6;
/** So few trials are run before a second thread has begun. */
const FEW = 8;
/** How long the second thread may take beyond the first, at the least. */
const LEAST_PATIENCE_MS = 500;

const second = new WarmWorker(
  () => new Worker(new URL('./half.worker.ts', import.meta.url), { type: 'module' }),
);
const hasSecond = navigator.hardwareConcurrency > 1 && typeof Worker !== 'undefined';

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
    const middle = rows >> 1;
    const upper = { frame, look, part: { from: 0, to: middle } };
    const lower = { frame, look, part: { from: middle, to: rows } };
    const [making, part] = await inTwo<WorkMaking, WorkPart>(
      () => average(upper),
      { kind: 'average', ...lower },
      async () => (await average(lower)).part(),
    );
    return { work: making.made([part]), isPerturbed: false };
  } finally {
    frame.close();
  }
}

/** The harmony of a work image; a second thread runs half of the trials, which makes no difference to them. */
export async function gatherWork(
  work: WorkImage,
  options: GatherFromOptions,
): Promise<Result<Gathered, GatherFault>> {
  const gathering = gatheringOf(work, options);
  for (let turn = gathering.next(); ; ) {
    if (turn.done) return turn.value;
    turn = gathering.next(await trials(turn.value));
  }
}

async function trials(wanted: TrialsWanted): Promise<readonly Uint8Array[]> {
  const { from, to } = wanted;
  if (!hasSecond || to - from <= FEW) return trialsOf(wanted);
  const middle = (from + to) >> 1;
  const [mine, theirs] = [
    { ...wanted, to: middle },
    { ...wanted, from: middle },
  ];
  const both = await inTwo<Uint8Array[], Uint8Array[]>(
    () => trialsOf(mine),
    { kind: 'trials', ...theirs },
    () => trialsOf(theirs),
  );
  return both.flat();
}

/** Does one half while a second thread does the other; should that fail, or never answer, it is done here. */
async function inTwo<A, B>(
  own: () => A | Promise<A>,
  theirs: HalfJob,
  instead: () => B | Promise<B>,
): Promise<[A, B]> {
  const giveUp = new AbortController();
  const answer = second.run<HalfJob, B, never>(theirs, { signal: giveUp.signal }).catch(() => null);
  const began = performance.now();
  const mine = await own();
  const patience = LEAST_PATIENCE_MS + 2 * (performance.now() - began);
  const late = setTimeout(() => giveUp.abort(), patience);
  const other = (await answer) ?? (await instead());
  clearTimeout(late);
  return [mine, other];
}
