import { describe, expect, test } from 'vitest';
import { labOfLCh } from '../../src/colour/lab.ts';
import { PERIOD_PAIRS } from '../../src/harmony/period-practice.ts';
import { relationsOf } from '../../src/harmony/relations.ts';
import { periodWords } from '../../src/messages/relation-messages.ts';

const meadow = [
  { name: 'green', lab: labOfLCh(48, 32, 125), share: 0.62 },
  { name: 'blue-grey', lab: labOfLCh(66, 9, 250), share: 0.34 },
  { name: 'red', lab: labOfLCh(46, 60, 30), share: 0.04 },
];

describe('relations of a harmony', () => {
  const told = relationsOf(meadow);

  test('dominant, foil and accent', () => {
    expect([told.dominant, told.foil, told.accent]).toEqual([0, 1, 2]);
    expect(told.words).toBe(
      'The green is dominant, the blue-grey is its foil, the red is the accent.',
    );
  });

  test('an accent that gathering marked stays one, whatever its chroma', () => {
    const marked = relationsOf([
      meadow[0]!,
      { ...meadow[1]!, share: 0.36 },
      { name: 'white', lab: [90, 0, 4], share: 0.02, accent: true },
    ]);
    expect([marked.foil, marked.accent]).toEqual([1, 2]);
  });

  test('intervals in plain words, every pair once', () => {
    expect(told.pairs.map(({ of, beside }) => [of, beside])).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
    const [greyed, reddened] = told.pairs;
    expect(greyed!.lightness.words).toBe('the blue-grey is lighter than the green');
    expect(greyed!.lightness.by).toBeCloseTo(18, 9);
    expect(greyed!.chroma.words).toBe('the blue-grey is duller than the green');
    expect(reddened!.lightness.words).toBe('the green and the red are equally light');
    expect(reddened!.hue.words).toBe('the green and the red are far apart in hue');
    expect(reddened!.period[0]!.held).toBe('held');
  });

  test('the balance of temperature', () => {
    expect(told.temperature.warm + told.temperature.cool + told.temperature.neither).toBeCloseTo(
      1,
      9,
    );
    expect(relationsOf([meadow[2]!]).temperature.words).toBe('warm throughout');
    const even = relationsOf([
      { name: 'a', lab: labOfLCh(50, 30, 50), share: 0.5 },
      { name: 'b', lab: labOfLCh(50, 30, 230), share: 0.5 },
    ]);
    expect(even.temperature.words).toBe('warm and cool in balance');
    // On the published scale every neutral scores −0.5, and equal steps to both poles balance there.
    expect(even.temperature.measure).toBeCloseTo(-0.5, 9);
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

test('every row of period practice can be said', () => {
  expect(PERIOD_PAIRS.length).toBeGreaterThan(5);
  for (const row of PERIOD_PAIRS) expect(periodWords(row)).toMatch(/^[A-Z].*: .*\(.+\)\./);
  expect(periodWords(PERIOD_PAIRS.find(({ held }) => held === 'held; disputed')!)).toBe(
    'Blue and green: held to go together, but disputed (Leonardo da Vinci, A Treatise on Painting (English edition)). He held that green gains nothing beside blue.',
  );
});
