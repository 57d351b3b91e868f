import { expect, test } from 'vitest';
import { downsampled } from '../../src/photo/downsample.ts';
import { brushStroke, fullMask } from '../../src/photo/mask.ts';
import { picture } from './paint.ts';

const [width, height] = [1200, 800];
const scene = picture(width, height, (x) => (x < width / 4 ? [200, 40, 30] : [40, 90, 160]));

// A mask drawn by hand is smaller than the photograph: each cell asks it at its own place.
test('what a brush has rubbed out is not looked at, the rest is', () => {
  const full = fullMask(width, height);
  expect(full.width).toBeLessThan(width);
  // Down the left edge, an eighth of the longer edge to either side: the red quarter, about.
  const mask = brushStroke(
    full,
    [
      [0.06, -0.2],
      [0.06, 1.2],
    ],
    0.2,
    0,
  );
  const { pixelCounts: seen, a, includedPixels: pixels, L } = downsampled(scene, { mask })!;
  const all = downsampled(scene)!;
  expect(all.includedPixels).toBe(width * height);
  expect(pixels / all.includedPixels).toBeGreaterThan(0.7);
  expect(pixels / all.includedPixels).toBeLessThan(0.78);
  const columns = all.width;
  const middle = Math.floor(all.height / 2) * columns;
  expect(seen[middle + 2]).toBe(0);
  expect(seen[middle + columns - 3]).toBeGreaterThan(0);
  expect(L).toHaveLength(all.L.length);
  // Nothing red is left.
  expect(Math.max(...a)).toBeLessThan(0.01);
});
