import { expect, test } from 'vitest';
import { weightedKMeans } from '../../src/segmentation/histogram-kmeans.ts';
import { describeShared, readSharedJson } from '../shared.ts';

// D. Arthur and S. Vassilvitskii, SODA 2007, for seeding by squared distance; the weighted example
// on the 24 chart colours (D. Pascale's average spectra) was computed by independent programs, with
// this very start: the heaviest point, then the largest weight times squared distance.
describeShared('weighted k-means against the worked example', () => {
  const { points_Lab, weights, greedy, best_known_SSE } = readSharedJson(
    'reference/colour-checks.json',
  ).clustering.kmeans_example;
  const column = (i: number) => Float64Array.from(points_Lab, (p: number[]) => p[i]!);
  const clusters = weightedKMeans(
    { bins: 24, weight: Float64Array.from(weights), L: column(0), a: column(1), b: column(2) },
    5,
    1,
    50,
  );

  test('same assignment, masses and centres', () => {
    expect([...clusters.ofBin]).toEqual(greedy.assignment);
    expect([...clusters.weight]).toEqual(greedy.mass);
    greedy.centroids.forEach((centre: number[], c: number) => {
      expect(clusters.L[c]).toBeCloseTo(centre[0]!, 6);
      expect(clusters.a[c]).toBeCloseTo(centre[1]!, 6);
      expect(clusters.b[c]).toBeCloseTo(centre[2]!, 6);
    });
  });

  test('same sum of squares, 1.4 % over the best of 20 000 random runs', () => {
    let sum = 0;
    points_Lab.forEach(([L, a, b]: number[], i: number) => {
      const c = clusters.ofBin[i]!;
      sum +=
        weights[i] *
        ((L! - clusters.L[c]!) ** 2 + (a! - clusters.a[c]!) ** 2 + (b! - clusters.b[c]!) ** 2);
    });
    expect(sum).toBeCloseTo(greedy.SSE, 3);
    expect(sum / best_known_SSE).toBeLessThan(1.02);
  });
});
