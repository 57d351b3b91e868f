import { describe, expect, test } from 'vitest';
import { labOfLCh } from '../../src/colour/lab.ts';
import { relationsOf } from '../../src/harmony/roles-and-intervals.ts';

const meadow = [
  { name: 'green', lab: labOfLCh(48, 32, 125), share: 0.62 },
  { name: 'blue-grey', lab: labOfLCh(66, 9, 250), share: 0.34 },
  { name: 'red', lab: labOfLCh(46, 60, 30), share: 0.04 },
];

describe('relations of a harmony', () => {
  const told = relationsOf(meadow);

  test('dominant, foil and accent', () => {
    expect([told.dominant, told.foil, told.accent]).toEqual([0, 1, 2]);
  });

  test('an accent that gathering marked stays one, whatever its chroma', () => {
    const marked = relationsOf([
      meadow[0]!,
      { ...meadow[1]!, share: 0.36 },
      { name: 'white', lab: [90, 0, 4], share: 0.02, accent: true },
    ]);
    expect([marked.foil, marked.accent]).toEqual([1, 2]);
  });

  test('intervals of every pair once', () => {
    expect(told.pairs.map(({ of, beside }) => [of, beside])).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
    const [greyed, reddened] = told.pairs;
    expect(greyed!.lightness).toBeCloseTo(18, 9);
    expect(greyed!.chroma).toBeCloseTo(-23, 9);
    expect(reddened!.lightness).toBeCloseTo(-2, 9);
    expect(reddened!.hue.hueless).toEqual([]);
    // From green through yellow and orange: back along the hue circle.
    expect(reddened!.hue.turnDeg).toBeLessThan(-80);
    expect(reddened!.hue.turnDeg).toBeGreaterThan(-130);
    expect(reddened!.period[0]!.held).toBe('held');
  });

  test('the balance of temperature', () => {
    expect(told.temperature.warm + told.temperature.cool + told.temperature.neither).toBeCloseTo(
      1,
      9,
    );
    expect(relationsOf([meadow[2]!]).temperature).toMatchObject({ warm: 1, cool: 0, neither: 0 });
    const even = relationsOf([
      { name: 'a', lab: labOfLCh(50, 30, 50), share: 0.5 },
      { name: 'b', lab: labOfLCh(50, 30, 230), share: 0.5 },
    ]);
    expect(even.temperature).toMatchObject({ warm: 0.5, cool: 0.5, neither: 0 });
    // On the published scale every neutral scores −0.5, and equal steps to both poles balance there.
    expect(even.temperature.measure).toBeCloseTo(-0.5, 9);
  });

  test('a colour without a hue is named by its place, and nothing turns', () => {
    const grey = { name: 'grey', lab: [40, 0, 0] as const, share: 0.1 };
    const hues = relationsOf([meadow[0]!, grey, { ...grey, name: 'pale grey' }]).pairs;
    expect(hues.map(({ hue }) => hue)).toEqual([
      { turnDeg: 0, hueless: [1] },
      { turnDeg: 0, hueless: [2] },
      { turnDeg: 0, hueless: [1, 2] },
    ]);
  });

  test('one colour alone has no pair, no foil and no score', () => {
    const alone = relationsOf([meadow[0]!]);
    expect([alone.foil, alone.accent, alone.meanScore, alone.pairs]).toEqual([
      null,
      null,
      null,
      [],
    ]);
    expect(() => relationsOf([])).toThrow(RangeError);
  });
});
