import type { Lab } from '../../src/colour/lab.ts';
import { findMixtures } from '../../src/mixture/find.ts';
import { wholeShelf } from '../../src/pigment/starter.ts';

const TARGETS: readonly Lab[] = [
  [62, 18, 34],
  [45, -12, 22],
  [52, -4, -24],
  [38, 34, 20],
  [78, 2, 12],
];

/** Lines of the report: five colours with up to four pigments, over shelves of growing size. */
export async function benchMixture(): Promise<string[]> {
  const whole = wholeShelf();
  return [8, 16, 24].map((count) => {
    const shelf = { ...whole, paints: whole.paints.slice(0, count) };
    const time = (quick: boolean) => {
      const start = performance.now();
      findMixtures(TARGETS, shelf, { quick });
      return performance.now() - start;
    };
    time(false);
    const [full, quick] = [time(false), time(true)];
    return `${count} pigments: whole search ${full.toFixed(0)} ms, quick ${quick.toFixed(0)} ms (${(full / quick).toFixed(1)} times)`;
  });
}
