import { expect, test } from 'vitest';
import {
  fullMask,
  inverted,
  keepInside,
  keepMiddle,
  keptShare,
  stroke,
} from '../../src/photo/mask.ts';

const full = fullMask(4000, 3000);

test('a full mask is of screen size and keeps everything', () => {
  expect([full.width, full.height]).toEqual([512, 384]);
  expect(keptShare(full)).toBe(1);
  expect(fullMask(3, 2).data.length).toBe(6);
});

test('the middle is an oval of three fifths', () => {
  const middle = keepMiddle(full);
  expect(keptShare(middle)).toBeCloseTo(Math.PI * 0.3 * 0.3, 2);
  expect(keptShare(inverted(middle))).toBeCloseTo(1 - Math.PI * 0.09, 2);
});

test('a stroke rubs out a round-ended band, and another brings it back', () => {
  const rubbed = stroke(
    full,
    [
      [0.25, 0.5],
      [0.75, 0.5],
    ],
    0.05,
    0,
  );
  const r = 0.05 * 512;
  const expected = (256 * 2 * r + Math.PI * r * r) / (512 * 384);
  expect(1 - keptShare(rubbed)).toBeCloseTo(expected, 2);
  expect(
    keptShare(
      stroke(
        rubbed,
        [
          [0.25, 0.5],
          [0.75, 0.5],
        ],
        0.06,
        1,
      ),
    ),
  ).toBe(1);
  // The old mask is the undo.
  expect(keptShare(full)).toBe(1);
  expect(1 - keptShare(stroke(full, [[0.5, 0.5]], 0, 0))).toBeGreaterThan(0);
});

test('an outline keeps its inside, even-odd', () => {
  const inside = keepInside(full, [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.75, 0.75],
    [0.25, 0.75],
  ]);
  expect(keptShare(inside)).toBeCloseTo(0.25, 2);
  const triangle = keepInside(full, [
    [0, 0],
    [1, 0],
    [0, 1],
  ]);
  expect(keptShare(triangle)).toBeCloseTo(0.5, 2);
  expect(() =>
    keepInside(full, [
      [0, 0],
      [1, 1],
    ]),
  ).toThrow(RangeError);
});
