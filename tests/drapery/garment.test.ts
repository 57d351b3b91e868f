import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import type { ClothRequest } from '../../src/drapery/cloth-types.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { clothsOf } from './cloths.ts';

/** Pigments of every kind, few enough to search in a moment. */
const starter = starterShelf();
const PIGMENTS = [
  'lead_white',
  'lead_tin_yellow',
  'yellow_ochre',
  'vermilion',
  'madder_lake',
  'ultramarine',
  'raw_umber',
  'bone_black',
  'charcoal_black',
];
const small = {
  ...starter,
  paints: starter.paints.filter(({ pigment }) => PIGMENTS.includes(pigment)),
};

test('the small shelf has all its pigments', () => {
  expect(small.paints).toHaveLength(PIGMENTS.length);
});

// A film as thick as planned turned the second of them by 12 degrees in its shadow.
test.each([
  [40, 46, 20],
  [35, 10, -20],
] as Lab[])('a glaze of its own hue holds it downward: %d, %d, %d', (...lab) => {
  const { count, draped, expectHeld } = clothsOf(small);
  const { folds } = draped({ name: 'a', lab, way: 'underpaint and glaze', stuff: 'satin' });
  expectHeld(folds[2]!.lab, folds.slice(3));
  expect(count.held).toBe(3);
});

// Drawn by lot, on the whole starter shelf: tests/simulation/garment.test.ts.
describe('a cloth of each kind, within the reach of a small shelf and beyond it', () => {
  const cloth = (wish: Omit<ClothRequest, 'name'>): ClothRequest => ({ name: 'cloth', ...wish });

  // A grey has no hue to hold, nor has black, nor a green's deepest fold.
  test.each([
    [
      'a red, of wool, beside a blue',
      3,
      { lab: [42, 44, 26], stuff: 'wool', neighbour: [45, 0, -30] },
    ],
    ['a green, of linen, evenly spaced', 2, { lab: [50, -18, 16], stuff: 'linen', even: true }],
    ['a grey, of velvet', 0, { lab: [45, 1, 3], stuff: 'velvet' }],
    ['a yellow of beyond the reach, of satin', 3, { lab: [92, 5, 88], stuff: 'satin' }],
    [
      'near black, of satin, beside a white',
      0,
      { lab: [8, 3, -4], stuff: 'satin', neighbour: [95, 0, 4] },
    ],
  ] as [string, number, Pick<ClothRequest, 'lab' | 'stuff' | 'even' | 'neighbour'>][])(
    '%s, deepened in its own hue: lightness falls, %d hues are held, no black outside the rule',
    (_, held, wish) => {
      const { count, expectDeepened } = clothsOf(small);
      expectDeepened(cloth({ ...wish, way: 'deepened in its own hue' }));
      expect(count.held).toBe(held);
    },
  );

  test.each([['yellow and violet', { lab: [75, 4, 50], shadows: [35, 22, -20] }]] as [
    string,
    { lab: Lab; shadows: Lab },
  ][])('shot cloth, %s: its shadows hold their own hue', (_, wish) => {
    const { count, expectShot } = clothsOf(small);
    expectShot(cloth({ ...wish, way: 'shot cloth', stuff: 'satin' }));
    expect(count.held).toBe(2);
  });

  test('as nature had it: six lightnesses, each with its own hue', () => {
    const ladder: Lab[] = [
      [88, 4, 30],
      [70, 20, 34],
      [52, 34, 30],
      [40, 30, 14],
      [28, 18, -6],
      [14, 8, -10],
    ];
    clothsOf(small).expectNature(
      cloth({ lab: ladder[2]!, ladder, way: 'as nature had it', stuff: 'linen' }),
    );
  });

  test.each([
    ['madder_lake', [45, 42, 22]],
    ['ultramarine', [48, 30, 30]],
  ] as [string, Lab][])(
    'underpaint and a glaze of %s: the film grows thicker into the folds',
    (glaze, lab) => {
      const { count, expectGlazed } = clothsOf(small);
      expectGlazed(cloth({ lab, glaze, way: 'underpaint and glaze', stuff: 'velvet' }));
      expect(count.held).toBeGreaterThanOrEqual(1);
    },
  );
});
