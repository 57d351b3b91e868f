import { availableParallelism } from 'node:os';
import Tinypool from 'tinypool';
import type { OpenPool } from './gather.ts';

/**
 * Worker threads, one photograph at a time in each and at most one thread to a core. They run the
 * bundled gather-worker.js, so this works from the bundle alone.
 */
export const inWorkers: OpenPool = (photographs) => {
  const pool = new Tinypool({
    filename: new URL('./gather-worker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: Math.min(photographs, availableParallelism()),
    concurrentTasksPerWorker: 1,
  });
  return { run: (task) => pool.run(task), close: () => pool.destroy() };
};
