import { describe, expect, test } from 'vitest';
import { SUM, SUMS_PER_PAIR } from '../../src/segmentation/boundaries.ts';
import { groupOf, type MergedGroup, mergeCost } from '../../src/segmentation/merge-cost.ts';

/** One node alone, of an OKLab lightness and a chroma relative to it, all in one hue. */
function group(L: number, relativeChroma: number): MergedGroup {
  const one = (v: number) => Float64Array.of(v);
  return groupOf(
    {
      count: 1,
      weight: one(100),
      cells: one(100),
      L: one(L),
      a: one(L * relativeChroma),
      b: one(0),
    },
    0,
  );
}
const apart = new Float64Array(SUMS_PER_PAIR);
/** A border of 100 crossings at which all of the difference in colour happens, and none in lightness. */
function cut(difference: number, low: number): Float64Array {
  const sums = new Float64Array(SUMS_PER_PAIR);
  const step = difference * difference * 100 * low;
  sums[SUM.meetings] = 100;
  sums[SUM.crossings] = 100;
  sums[SUM.acrossC] = step;
  sums[SUM.turnA] = difference * 100 * low;
  return sums;
}

// The light of a gleam adds white: a thing's gleam is paler for its lightness and has hardly less chroma.
// The same step the other way, richer and lighter, no gleam makes.
describe('a gleam is forgiven', () => {
  // Chroma 0.1 in both: 0.8 × 0.125 and 0.5 × 0.2.
  const body = group(0.5, 0.2);
  const gleam = group(0.8, 0.125);
  const paler = group(0.5, 0.125);
  const richer = group(0.8, 0.2);
  // Apart by 0.075 in relative chroma, carried to the lightness halfway, forgiven in strong colour.
  const across = (0.075 * Math.sqrt((0.5 * 1.3) / 2)) / (1 + 4 * 0.125);

  test('apart from each other: 0.45 of the step in chroma counts', () => {
    const shine = mergeCost(body, gleam, apart, 0, 1);
    const none = mergeCost(paler, richer, apart, 0, 1);
    // What light and dark add is the same in both.
    expect(none ** 2 - shine ** 2).toBeCloseTo(across ** 2 * (1 - 0.45 ** 2), 9);
    expect(mergeCost(gleam, body, apart, 0, 1)).toBeCloseTo(shine, 12);
  });

  test('where they meet in a hard edge they are less apart than without a gleam', () => {
    const shine = mergeCost(body, gleam, cut(-0.075, 0.5), 0, 100);
    const none = mergeCost(paler, richer, cut(0.075, 0.5), 0, 100);
    // How surely one hue holds at a relative chroma of 0.125, and how hard the edge then counts.
    const held = (0.125 - 0.05) / 0.13;
    const hard = 1 - 0.7 * held;
    const colour = 0.45 * across * (0.45 + 1.2 * hard);
    const light = (hard * (1 - 0.8 * held) * 0.3) / 2 + 0.04 * 0.3;
    expect(shine).toBeCloseTo(Math.hypot(colour, light), 9);
    expect(none / shine).toBeGreaterThan(1.6);
  });

  test('what is paler and has lost chroma as well is another colour', () => {
    // Chroma 0.05 against 0.1: under six tenths, where nothing is forgiven.
    const washed = group(0.8, 0.0625);
    const there = Math.sqrt((0.5 * 1.3) / 2);
    const whole = (0.1375 * there) / (1 + 4 * 0.0625);
    const light = 0.3 * (0.6 - 0.4 * ((0.0625 - 0.05) / 0.13));
    expect(mergeCost(body, washed, apart, 0, 1)).toBeCloseTo(Math.hypot(whole, light), 9);
  });
});
