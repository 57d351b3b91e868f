import { beforeEach, expect, test, vi } from 'vitest';
import { autosave } from '../../../src/ui/state/autosave.ts';
import { job, type TaskOptions } from '../../../src/ui/state/job.ts';
import { undoHistory } from '../../../src/ui/state/undo-history.ts';

/** A task that ends when it is told to, and fails with the abort's reason like a worker's job. */
function openTask() {
  const seen: { options?: TaskOptions; finish?: (value: string) => void } = {};
  const task = (options: TaskOptions) =>
    new Promise<string>((resolve, reject) => {
      seen.options = options;
      seen.finish = resolve;
      options.signal.addEventListener('abort', () => reject(options.signal.reason));
    });
  return { task, seen };
}

let stops = 0;
const errors: unknown[] = [];
const reactions = { onStop: () => stops++, onError: (error: unknown) => errors.push(error) };
beforeEach(() => {
  stops = 0;
  errors.length = 0;
});

test('a job reports its progress and its result, then rests', async () => {
  const one = job(reactions);
  const { task, seen } = openTask();
  const result = one.run(task);
  expect(one.progress.value).toBe(0);
  seen.options!.onProgress(0.4);
  expect(one.progress.value).toBe(0.4);
  seen.finish!('done');
  expect(await result).toBe('done');
  expect(one.progress.value).toBeNull();
  expect([stops, errors]).toEqual([0, []]);
});

test('newer work takes the place of older without a message, and the older reports no more', async () => {
  const one = job(reactions);
  const [older, newer] = [openTask(), openTask()];
  const first = one.run(older.task);
  const second = one.run(newer.task);
  expect(await first).toBeNull();
  older.seen.options!.onProgress(0.9);
  expect(one.progress.value).toBe(0);
  newer.seen.finish!('second');
  expect(await second).toBe('second');
  expect([stops, errors]).toEqual([0, []]);
});

test('a stop by the painter is answered, a cancel is not, a failure is reported', async () => {
  const one = job(reactions);
  const stopped = one.run(openTask().task);
  one.stop();
  expect([await stopped, stops]).toEqual([null, 1]);
  const cancelled = one.run(openTask().task);
  one.cancel();
  expect([await cancelled, stops]).toEqual([null, 1]);
  const failure = new Error('no memory');
  expect(await one.run(() => Promise.reject(failure))).toBeNull();
  expect([stops, errors]).toEqual([1, [failure]]);
  expect(one.progress.value).toBeNull();
});

test('a history gives back the latest hundred states, the last first', () => {
  const steps = undoHistory<number>();
  expect([steps.canUndo.value, steps.pop()]).toEqual([false, null]);
  for (let i = 0; i < 130; i++) steps.push(i);
  expect(steps.latest.value).toBe(129);
  const back: number[] = [];
  while (steps.canUndo.value) back.push(steps.pop()!);
  expect(back).toEqual(Array.from({ length: 100 }, (_, i) => 129 - i));
  steps.push(1);
  steps.clear();
  expect(steps.canUndo.value).toBe(false);
});

test('an autosave writes once after the pause, at once when flushed, never when cancelled', async () => {
  vi.useFakeTimers();
  try {
    const written: string[] = [];
    const saving = autosave(400, async () => {
      written.push('write');
    });
    saving.schedule();
    vi.advanceTimersByTime(399);
    saving.schedule();
    vi.advanceTimersByTime(399);
    expect(written).toHaveLength(0);
    vi.advanceTimersByTime(1);
    expect(written).toHaveLength(1);
    await saving.flush();
    expect(written).toHaveLength(1);
    saving.schedule();
    await saving.flush();
    expect(written).toHaveLength(2);
    saving.schedule();
    saving.cancel();
    vi.advanceTimersByTime(1000);
    expect(written).toHaveLength(2);
  } finally {
    vi.useRealTimers();
  }
});
