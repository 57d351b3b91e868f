import { kmeans } from 'ml-kmeans';
import { expect, test } from 'vitest';
import { downsampled } from '../../src/photo/downsample.ts';
import { colourHistogram, weightedKMeans } from '../../src/segmentation/histogram-kmeans.ts';
import { picture } from '../photo/paint.ts';

const scene = picture(90, 70, (x, y) => [
  (x * 2 + 30) % 200,
  60 + Math.abs(y - 30) * 2,
  x < 50 ? 40 + y : 180 - y,
]);

test('bins hold every pixel, and their means are the pixels’ own', () => {
  const work = downsampled(scene)!;
  const bins = colourHistogram(work, work.pixelCounts);
  expect(bins.weight.reduce((sum, w) => sum + w, 0)).toBe(6300);
  const mean = bins.L.reduce((sum, L, i) => sum + L * bins.weight[i]!, 0) / 6300;
  expect(mean).toBeCloseTo(work.L.reduce((sum, L) => sum + L, 0) / 6300, 6);
});

// The oracle: ml-kmeans on every pixel by itself, from the same first centres.
test('clustering weighted bins ends where clustering every pixel does', () => {
  const work = downsampled(scene)!;
  const bins = colourHistogram(work, work.pixelCounts);
  const ours = weightedKMeans(bins, 6, 1, 200);
  const centres = Array.from({ length: 6 }, (_, c) => [ours.L[c]!, ours.a[c]!, ours.b[c]!]);
  const points = Array.from(work.L, (L, i) => [L, work.a[i]!, work.b[i]!]);
  const oracle = kmeans(points, 6, { initialization: centres, maxIterations: 50 });
  expect(oracle.centroids.map(({ length }) => length)).toEqual([3, 3, 3, 3, 3, 3]);
  oracle.centroids.forEach((centre, c) => {
    centre.forEach((v, i) => {
      // Pixels of one bin may fall on both sides of a border: a bin is 0.005 wide.
      expect(Math.abs(v - centres[c]![i]!)).toBeLessThan(0.003);
    });
  });
});

test('fewer colours than clusters: each its own, none empty', () => {
  const work = downsampled(picture(20, 20, (x) => (x < 5 ? [200, 0, 0] : [0, 0, 200])))!;
  const clusters = weightedKMeans(colourHistogram(work, work.pixelCounts), 40);
  expect(clusters.count).toBe(2);
  expect([...clusters.weight]).toEqual([300, 100]);
});
