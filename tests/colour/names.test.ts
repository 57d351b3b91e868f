import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeWords, differenceWords } from '../../src/colour/change-words.ts';
import { nameOf } from '../../src/colour/colour-name.ts';
import {
  chromaWords,
  describeColour as said,
  temperatureWords,
  valueWords,
} from '../../src/colour/describe-colour.ts';
import { distinctNamesOf } from '../../src/colour/distinct-names.ts';
import { namedHueOf } from '../../src/colour/hue-family.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { evenly } from '../evenly.ts';

const lab: fc.Arbitrary<Lab> = fc.tuple(evenly(0, 100), evenly(-120, 120), evenly(-120, 120));
const near = ([L, a, b]: Lab, by: number): fc.Arbitrary<Lab> =>
  fc.tuple(evenly(L - by, L + by), evenly(a - by, a + by), evenly(b - by, b + by));

describe('names', () => {
  test('every colour has one: two to four words, no numbers', () => {
    fc.assert(
      fc.property(lab, (colour) => {
        expect(nameOf(colour)).toMatch(/^[a-z-]+( [a-z-]+){0,3}$/);
      }),
      { seed: 1 },
    );
  });

  // Common practice, no source: what a painter would call these.
  test.each<[string, Lab, string]>([
    ['a pure white', [100, 0, 0], 'white'],
    ['a black', [8, 0, 0], 'black'],
    ['the middle grey', [50, 0, 0], 'grey'],
    ['stone', [65, 1, 8], 'warm grey'],
    ['wet slate', [45, -1.5, -4], 'cool grey'],
    ['umber', [26, 7, 9], 'brown'],
    ['sienna, burnt', [33, 22, 22], 'red-brown'],
    ['ochre', [62, 14, 48], 'golden yellow'],
    ['vermilion', [48, 58, 42], 'warm red'],
    ['madder', [32, 42, 18], 'red'],
    ['ultramarine', [28, 20, -50], 'violet-blue'],
    ['azurite', [40, -4, -36], 'blue'],
    ['malachite', [55, -30, 8], 'green'],
    ['verdigris', [50, -38, 2], 'blue-green'],
    ['moss in shade', [32, -8, 22], 'olive green'],
    ['an olive', [45, -2, 30], 'olive'],
    ['a rose', [70, 30, 4], 'cool pink'],
    ['linen', [90, 0, 14], 'cream'],
    ['marigold', [70, 32, 75], 'orange'],
    ['lilac', [68, 18, -18], 'purple'],
  ])('%s', (_, colour, word) => {
    expect(namedHueOf(colour).word).toBe(word);
  });

  test('a lost number is no colour', () => {
    expect(() => nameOf([Number.NaN, 0, 0])).toThrow(RangeError);
  });

  test('modifiers follow value and chroma', () => {
    expect(nameOf([30, 12, -40])).toBe('deep violet-blue');
    expect(nameOf([75, -5, -25])).toBe('light blue');
    expect(nameOf([85, -3, -10])).toBe('pale blue');
    expect(nameOf([50, -2, -10])).toBe('dull blue');
    expect(nameOf([12, 3, -8])).toBe('blackish blue');
    expect(nameOf([30, 0, 0])).toBe('dark grey');
    expect(nameOf([45, 22, 45])).toBe('rich brown');
  });
});

describe('names of one harmony', () => {
  test('are all different, without numbers, and keep the order', () => {
    const close = lab.chain((colour) => fc.array(near(colour, 6), { minLength: 1, maxLength: 7 }));
    fc.assert(
      fc.property(close, (labs) => {
        const names = distinctNamesOf(labs);
        expect(new Set(names).size).toBe(labs.length);
        for (const [i, name] of names.entries()) {
          expect(name).not.toMatch(/\d|undefined/);
          expect(name.endsWith(namedHueOf(labs[i]!).word)).toBe(true);
        }
      }),
      { seed: 2, numRuns: 400 },
    );
  });

  test('stay plain where they differ already', () => {
    const labs: Lab[] = [
      [50, 0, 0],
      [40, -4, -36],
      [62, 14, 48],
    ];
    expect(distinctNamesOf(labs)).toEqual(labs.map(nameOf));
  });

  test('say what sets two or three apart', () => {
    expect(
      distinctNamesOf([
        [45, -6, -25],
        [56, -6, -25],
      ]),
    ).toEqual(['darker blue', 'lighter blue']);
    expect(
      distinctNamesOf([
        [84, -5, -20],
        [72, -5, -20],
      ]),
    ).toEqual(['very light blue', 'light blue']);
    expect(
      distinctNamesOf([
        [50, -8, -20],
        [50, -9, -26],
        [50, -9, -34],
      ]),
    ).toEqual(['duller blue', 'blue', 'brighter blue']);
    expect(
      distinctNamesOf([
        [45, 0, 0],
        [60, 0, 0],
        [52, 0, 0],
      ]),
    ).toEqual(['darker grey', 'lighter grey', 'grey']);
  });

  test('count what no eye tells apart', () => {
    expect(
      distinctNamesOf([
        [50, 0, 0],
        [50, 0, 0],
        [50, 0, 0],
      ]),
    ).toEqual(['grey', 'second grey', 'third grey']);
    expect(distinctNamesOf([])).toEqual([]);
  });
});

describe('words for parts of a colour', () => {
  test('value, chroma, temperature', () => {
    expect([10, 30, 55, 75, 95].map((L) => valueWords([L, 0, 0]))).toEqual([
      'very low',
      'low',
      'middle',
      'high',
      'very high',
    ]);
    expect([0, 10, 30, 50, 80].map((a) => chromaWords([50, a, 0]))).toEqual([
      'neutral',
      'weak',
      'moderate',
      'strong',
      'very strong',
    ]);
    expect(temperatureWords([50, 20, 24])).toBe('warm');
    expect(temperatureWords([50, -20, -24])).toBe('cool');
    expect(temperatureWords([50, -24, 20])).toBe('neutral');
    expect(temperatureWords([50, 0, 0])).toBe('neutral');
    expect(said([28, 20, -50])).toBe('deep violet-blue: low value, strong chroma, cool');
  });
});

describe('words for a difference', () => {
  test('limits belong to the lower word', () => {
    expect([0, 1, 1.01, 3, 3.01].map(differenceWords)).toEqual([
      'none seen',
      'none seen',
      'a trained eye sees it',
      'a trained eye sees it',
      'plain',
    ]);
  });

  test.each<[Lab, Lab, string]>([
    [[50, 20, 30], [50, 20, 30.5], 'no change seen'],
    [[50, 20, 30], [58, 20, 30], 'lighter'],
    [[50, 20, 30], [35, 20, 30], 'much darker'],
    [[50, 20, 30], [50, 14, 21], 'duller'],
    [[50, 0, -30], [54, -4, -30], 'lighter, a little cooler'],
    [[50, 35, 35], [50, 28, 41], 'yellower'],
    [[50, 1, 1], [50, 3, 5], 'warmer'],
    [[50, 0, 0], [50, -4, 4], 'greener'],
    [[50, 0, 0], [50, 20, 20], 'much warmer, much brighter'],
  ])('from %j to %j: %s', (from, to, words) => {
    expect(changeWords(from, to)).toBe(words);
  });

  test('back again says the opposite', () => {
    const opposites = [
      ['lighter', 'darker'],
      ['warmer', 'cooler'],
      ['brighter', 'duller'],
    ] as const;
    const counted = new Map(opposites.flat().map((word) => [word, 0]));
    fc.assert(
      fc.property(
        lab.chain((colour) => fc.tuple(fc.constant(colour), near(colour, 20))),
        ([x, y]) => {
          const [there, back] = [changeWords(x, y), changeWords(y, x)];
          for (const [word, other] of [
            ...opposites,
            ...opposites.map((pair) => pair.toReversed()),
          ]) {
            expect(there.includes(word!)).toBe(back.includes(other!));
            if (there.includes(word!)) counted.set(word!, counted.get(word!)! + 1);
          }
          expect(there.length).toBeGreaterThan(0);
        },
      ),
      { seed: 3, numRuns: 400 },
    );
    for (const [word, times] of counted) expect(times, word).toBeGreaterThan(40);
  });
});
