import type { Timing, TimingJob } from './timing.worker.ts';

declare global {
  interface Window {
    /** Times a photograph in a worker, and how long this page's own thread was held up meanwhile. */
    timePhoto(url: string, rounds: number): Promise<Timing & { heldUpMs: number }>;
  }
}

window.timePhoto = async (url, rounds) => {
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
      worker.postMessage({ file, rounds } satisfies TimingJob);
    });
    return { ...timing, heldUpMs };
  } finally {
    clearInterval(watch);
    worker.terminate();
  }
};
