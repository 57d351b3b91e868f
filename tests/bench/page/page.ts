import { runJob } from '../../../workers/job-protocol.ts';
import type { MixtureJob, MixtureNews, MixtureResult } from '../../../workers/mixture.ts';
import { benchShelf, harmony, type Row } from '../mixture.ts';
import type { Timing, TimingJob } from './timing.worker.ts';

declare global {
  interface Window {
    /** Times a photograph in a worker, and how long this page's own thread was held up meanwhile. */
    timePhoto(
      url: string,
      rounds: number,
      without?: TimingJob['without'],
    ): Promise<Timing & { heldUpMs: number }>;
    /** Times the search for mixtures in a worker, and the app's own worker from its start to its answer. */
    timeMixtures(rounds: number): Promise<{ rows: Row[]; wholeMs: number[] }>;
  }
}

window.timeMixtures = async (rounds) => {
  const timing = new Worker(new URL('./mixing.worker.ts', import.meta.url), { type: 'module' });
  const rows = await new Promise<Row[]>((resolve, reject) => {
    timing.onmessage = ({ data }: MessageEvent<Row[]>) => resolve(data);
    timing.onerror = (event) => reject(new Error(event.message));
    timing.postMessage(null);
  });
  timing.terminate();
  const shelf = benchShelf();
  const job: MixtureJob = { kind: 'mix', targets: harmony(shelf), shelf, options: { most: 4 } };
  const wholeMs: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const from = performance.now();
    const { signal } = new AbortController();
    await runJob<MixtureJob, MixtureResult, MixtureNews>(
      () =>
        new Worker(new URL('../../../workers/mixture.worker.ts', import.meta.url), {
          type: 'module',
        }),
      job,
      { signal },
    );
    wholeMs.push(performance.now() - from);
  }
  return { rows, wholeMs };
};

window.timePhoto = async (url, rounds, without) => {
  const file = await (await fetch(url)).blob();
  const worker = new Worker(new URL('./timing.worker.ts', import.meta.url), { type: 'module' });
  let heldUpMs = 0;
  let last = performance.now();
  const watch = setInterval(() => {
    const now = performance.now();
    heldUpMs = Math.max(heldUpMs, now - last - 5);
    last = now;
  }, 5);
  try {
    const timing = await new Promise<Timing>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<Timing>) => resolve(data);
      worker.onerror = (event) => reject(new Error(event.message));
      last = performance.now();
      worker.postMessage({ file, rounds, without } satisfies TimingJob);
    });
    return { ...timing, heldUpMs };
  } finally {
    clearInterval(watch);
    worker.terminate();
  }
};
