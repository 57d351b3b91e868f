import { expect, test } from 'vitest';
import { type DownsampledImage, emptyPlanes } from '../../src/photo/downsample.ts';
import { seededRandom } from '../../src/random.ts';
import { smoothImage } from '../../src/segmentation/smoothing.ts';

const PLANES = ['L', 'a', 'b'] as const;

/** Two colours with grain, and holes that are not looked at. */
function scene(width: number, height: number): DownsampledImage {
  const next = seededRandom(7);
  const planes = emptyPlanes(width * height);
  const seen = new Float32Array(width * height);
  for (let i = 0; i < seen.length; i++) {
    if (next() < 0.1) continue;
    seen[i] = 1;
    const isLeft = i % width < width / 2;
    planes.L[i] = (isLeft ? 0.3 : 0.7) + 0.05 * next();
    planes.a[i] = (isLeft ? 0.1 : -0.1) + 0.02 * next();
    planes.b[i] = 0.05 * next();
  }
  const pixels = seen.reduce((sum, n) => sum + n, 0);
  return {
    width,
    height,
    ...planes,
    pixelCounts: seen,
    includedPixels: pixels,
    clipped: { white: 0, black: 0 },
    opaque: true,
  };
}

/** Mean and variance of the 3 × 3 window round a cell, over what is looked at. */
function windowAt(work: DownsampledImage, x: number, y: number) {
  const cells: number[] = [];
  for (let v = Math.max(0, y - 1); v <= Math.min(work.height - 1, y + 1); v++)
    for (let u = Math.max(0, x - 1); u <= Math.min(work.width - 1, x + 1); u++)
      if (work.pixelCounts[v * work.width + u]! > 0) cells.push(v * work.width + u);
  const mean = (f: (i: number) => number) => cells.reduce((sum, i) => sum + f(i), 0) / cells.length;
  const means = PLANES.map((plane) => mean((i) => work[plane][i]!));
  const spread = PLANES.reduce(
    (sum, plane, p) => sum + mean((i) => (work[plane][i]! - means[p]!) ** 2),
    0,
  );
  return { means, spread };
}

// By the definition, window by window (M. Kuwahara et al., 1976, from memory).
test('each cell takes the mean of the window that varies least', () => {
  const work = scene(37, 29);
  const { width, height, pixelCounts: seen } = work;
  const flat = smoothImage(work);
  let [compared, differ] = [0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (seen[i] === 0) continue;
      const left = x >= 2 ? x - 2 : x;
      const right = x + 2 < width ? x + 2 : x;
      const up = y >= 2 ? y - 2 : y;
      const down = y + 2 < height ? y + 2 : y;
      const own = windowAt(work, x, y);
      const places = [
        [left, up],
        [right, up],
        [left, down],
        [right, down],
      ] as const;
      let best = { ...own, spread: own.spread * 1.05 };
      for (const [u, v] of places) {
        if (seen[v * width + u] === 0) continue;
        const one = windowAt(work, u, v);
        if (one.spread < best.spread) best = one;
      }
      compared++;
      if (!PLANES.every((plane, p) => Math.abs(flat[plane][i]! - best.means[p]!) <= 1e-6)) differ++;
    }
  expect(compared).toBe(work.includedPixels);
  expect(compared).toBeGreaterThan(900);
  expect(differ).toBe(0);
});

test('what is not looked at stays nothing, and a scene of one cell is itself', () => {
  const work = scene(20, 20);
  const flat = smoothImage(work);
  const left = [...work.pixelCounts.keys()].filter((i) => work.pixelCounts[i] === 0);
  expect(left.length).toBeGreaterThan(20);
  expect(new Set(left.map((i) => flat.L[i]))).toEqual(new Set([0]));
  const one = smoothImage({
    ...scene(1, 1),
    L: Float32Array.of(0.5),
    pixelCounts: Float32Array.of(1),
  });
  expect(one.L[0]).toBeCloseTo(0.5, 6);
});
