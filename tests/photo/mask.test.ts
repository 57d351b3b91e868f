import { expect, test } from 'vitest';
import {
  brushStroke,
  fullMask,
  includedShare,
  inverted,
  keepInside,
  keepMiddle,
} from '../../src/photo/mask.ts';

const full = fullMask(4000, 3000);

test('a full mask is of screen size and keeps everything', () => {
  expect([full.width, full.height]).toEqual([512, 384]);
  expect(includedShare(full)).toBe(1);
  expect(fullMask(3, 2).data.length).toBe(6);
});

test('the middle is an oval of three fifths', () => {
  const middle = keepMiddle(full);
  expect(includedShare(middle)).toBeCloseTo(Math.PI * 0.3 * 0.3, 2);
  expect(includedShare(inverted(middle))).toBeCloseTo(1 - Math.PI * 0.09, 2);
});

test('a stroke rubs out a round-ended band, and another brings it back', () => {
  const rubbed = brushStroke(
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
  expect(1 - includedShare(rubbed)).toBeCloseTo(expected, 2);
  expect(
    includedShare(
      brushStroke(
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
  expect(includedShare(full)).toBe(1);
  expect(1 - includedShare(brushStroke(full, [[0.5, 0.5]], 0, 0))).toBeGreaterThan(0);
});

test('an outline keeps its inside, even-odd', () => {
  const inside = keepInside(full, [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.75, 0.75],
    [0.25, 0.75],
  ]);
  expect(includedShare(inside)).toBeCloseTo(0.25, 2);
  const triangle = keepInside(full, [
    [0, 0],
    [1, 0],
    [0, 1],
  ]);
  expect(includedShare(triangle)).toBeCloseTo(0.5, 2);
  expect(() =>
    keepInside(full, [
      [0, 0],
      [1, 1],
    ]),
  ).toThrow(RangeError);
});
