import { expect, test } from 'vitest';
import type { FittedPaint } from '../../src/calibration/calibrate-paints.ts';
import { evidenceOfFit } from '../../src/calibration/curve-evidence.ts';
import { ownPaint } from '../../src/pigment/starter-shelf.ts';

const fitted = (rough: boolean, median: number, tenth: number): FittedPaint => ({
  ...ownPaint('yellow_ochre')!,
  known: 'photographed',
  rough,
  swatches: 1,
  piles: 0,
  expected: { median, tenth },
});

// By design: masstones alone left 5 and 16 in simulation, so nothing better is promised of one.
test('a paint known from its masstone alone promises no better than 5, one in ten 16', () => {
  expect(evidenceOfFit(fitted(true, 0.6, 1.4), '2031-05-17').expected).toEqual({
    median: 5,
    tenth: 16,
  });
  expect(evidenceOfFit(fitted(true, 7, 20), '2031-05-17').expected).toEqual({
    median: 7,
    tenth: 20,
  });
});

test('one that was seen in tints too promises what its fit expects', () => {
  const trust = evidenceOfFit(fitted(false, 0.6, 1.4), '2031-05-17');
  expect(trust.expected).toEqual({ median: 0.6, tenth: 1.4 });
  expect(trust).toMatchObject({ rough: false, date: '2031-05-17', swatches: 1 });
});
