import { expect, test } from 'vitest';
import { labOfLCh } from '../../src/colour/lab.ts';
import { gather } from '../../src/harmony/gather.ts';
import { relationsOf } from '../../src/harmony/roles-and-intervals.ts';
import { picture } from '../photo/paint.ts';

/** A third blue-grey, the rest green, and a red square of so many pixels a side. */
function colours(side: number) {
  const scene = picture(200, 150, (x, y) => {
    if (x >= 100 && x < 100 + side && y >= 40 && y < 40 + side) return [210, 30, 30];
    return x < 66 ? [90, 120, 150] : [70, 130, 60];
  });
  const found = gather(scene);
  if (!found.ok) throw new Error(found.fault.code);
  return found.value.colours.map(({ lab, share, accent }) => ({
    share,
    accent,
    hue: lab[1] > 30 ? 'red' : lab[2] > 10 ? 'green' : 'blue',
  }));
}

// By design: less than a fiftieth of the area, and far from every other colour.
test('a red square of a hundredth of the area is the accent and stands last', () => {
  const found = colours(17);
  expect(found.map(({ hue, accent }) => [hue, accent])).toEqual([
    ['green', false],
    ['blue', false],
    ['red', true],
  ]);
  expect(found[2]!.share).toBeCloseTo((17 * 17) / 30_000, 3);
});

test('one of a twelfth is a colour like the others: the largest first', () => {
  const found = colours(50);
  expect(found.map(({ hue, accent }) => [hue, accent])).toEqual([
    ['green', false],
    ['blue', false],
    ['red', false],
  ]);
  const shares = found.map(({ share }) => share);
  expect(shares).toEqual(shares.toSorted((a, b) => b - a));
  expect(shares[0]).toBeGreaterThan(0.5);
});

// By design: under a tenth of the area, and with more chroma than what holds most of it.
test.each([
  [0.04, 2],
  [0.3, null],
])('a bright red on %d of the picture: the accent is number %s', (share, accent) => {
  const related = relationsOf([
    { name: 'green', lab: labOfLCh(48, 32, 125), share: 0.62 },
    { name: 'blue-grey', lab: labOfLCh(66, 9, 250), share: 0.38 - share },
    { name: 'red', lab: labOfLCh(46, 60, 30), share },
  ]);
  expect(related.dominant).toBe(0);
  expect(related.accent).toBe(accent);
});
