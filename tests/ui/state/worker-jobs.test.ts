import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ReadyWorker, runJob, WarmWorker } from '../../../workers/job-protocol.ts';

/** A worker that answers when the test says so. */
class Slow {
  readonly heard: unknown[] = [];
  hasEnded = false;
  onmessage: ((event: MessageEvent) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;

  postMessage(message: unknown): void {
    this.heard.push(message);
  }
  terminate(): void {
    this.hasEnded = true;
  }
  say(data: unknown): void {
    this.onmessage?.({ data } as MessageEvent);
  }
}
const asWorker = (slow: Slow) => slow as unknown as Worker;
const { signal } = new AbortController();
/** Workers as they are asked for. */
function several(): { readonly all: readonly Slow[]; readonly spawn: () => Worker } {
  const all: Slow[] = [];
  const spawn = () => {
    all.push(new Slow());
    return asWorker(all.at(-1)!);
  };
  return { all, spawn };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('nothing is sent to a worker before it listens, then all of it in order', () => {
  const slow = new Slow();
  const helper = new ReadyWorker<string, string, never>(() => asWorker(slow));
  helper.send('first');
  helper.send('second');
  expect(slow.heard).toEqual([]);
  slow.say({ kind: 'ready' });
  helper.send('third');
  expect(slow.heard).toEqual(['first', 'second', 'third']);
});

test('a job waits for its worker, hears its news, and ends it with the answer', async () => {
  const slow = new Slow();
  const news: number[] = [];
  const answer = runJob<string, string, number>(() => asWorker(slow), 'mix', {
    signal,
    onNews: (one) => news.push(one),
  });
  expect(slow.heard).toEqual([]);
  slow.say({ kind: 'ready' });
  expect(slow.heard).toEqual(['mix']);
  slow.say({ kind: 'news', news: 0.5 });
  slow.say({ kind: 'value', value: 'mixed' });
  expect(await answer).toBe('mixed');
  expect(news).toEqual([0.5]);
  expect(slow.hasEnded).toBe(true);
});

test('a worker that does not start is told of; one that was warmed in vain is not waited upon', async () => {
  const { all, spawn } = several();
  const failed = runJob(spawn, 'mix', { signal });
  all[0]!.onerror?.({ message: 'no such file' } as ErrorEvent);
  await expect(failed).rejects.toThrow('no such file');

  const warm = new WarmWorker(spawn);
  warm.warm();
  all[1]!.onerror?.({ message: '' } as ErrorEvent);
  const answer = warm.run('look', { signal });
  all[2]!.say({ kind: 'ready' });
  all[2]!.say({ kind: 'value', value: 'seen' });
  expect(await answer).toBe('seen');
  // Kept for the next job, which need not wait.
  const again = warm.run('look again', { signal });
  expect(all.length).toBe(3);
  expect(all[2]!.heard).toEqual(['look', 'look again']);
  all[2]!.say({ kind: 'value', value: 'seen again' });
  expect(await again).toBe('seen again');
});

test('a job that is stopped takes its worker with it', async () => {
  const slow = new Slow();
  const stop = new AbortController();
  const answer = runJob(() => asWorker(slow), 'mix', { signal: stop.signal });
  stop.abort();
  await expect(answer).rejects.toThrow(/abort/i);
  expect(slow.hasEnded).toBe(true);
  expect(slow.heard).toEqual([]);
});

test('one that stays silent is not waited upon alone, and the first that listens has the job', async () => {
  const { all, spawn } = several();
  const answer = runJob<string, string, never>(spawn, 'mix', { signal });
  vi.advanceTimersByTime(5900);
  expect(all.length).toBe(1);
  vi.advanceTimersByTime(200);
  expect(all.length).toBe(2);
  // The first was only slow, and comes before the second.
  all[0]!.say({ kind: 'ready' });
  expect(all[1]!.hasEnded).toBe(true);
  expect(all[0]!.heard).toEqual(['mix']);
  all[0]!.say({ kind: 'value', value: 'mixed' });
  expect(await answer).toBe('mixed');
  vi.advanceTimersByTime(100_000);
  expect(all.length).toBe(2);
});

test('the second has the job where the first never comes; where none comes, that is told', async () => {
  const { all, spawn } = several();
  const answer = runJob<string, string, never>(spawn, 'mix', { signal });
  vi.advanceTimersByTime(6100);
  all[1]!.say({ kind: 'ready' });
  expect(all.map(({ hasEnded }) => hasEnded)).toEqual([true, false]);
  all[1]!.say({ kind: 'value', value: 'mixed' });
  expect(await answer).toBe('mixed');

  const failed = runJob(spawn, 'mix', { signal });
  const told = expect(failed).rejects.toThrow('did not start');
  vi.advanceTimersByTime(100_000);
  await told;
  expect(all.length).toBe(5);
  expect(all.every(({ hasEnded }) => hasEnded)).toBe(true);
});
