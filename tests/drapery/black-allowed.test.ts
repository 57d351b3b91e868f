import { expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { blackRule, outsideRule } from '../../src/drapery/black-rule.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const blacks = ['bone_black', 'charcoal_black'].filter((id) =>
  shelf.paints.some(({ pigment }) => pigment === id),
);
const BLUE: Lab = [35, 4, -32];
const recipe = [
  { pigment: 'ultramarine', share: 0.6 },
  { pigment: 'lead_white', share: 0.4 },
];

test('the shelf has a black', () => expect(blacks.length).toBeGreaterThan(0));

// Common practice; G. Field, Chromatography: keep black out of colour.
test.each<[string, Lab]>([
  ['blue', BLUE],
  ['green', [45, -25, 20]],
  ['yellow', [75, 5, 70]],
])('no black deepens a %s cloth', (_, local) => {
  const rule = blackRule(local, recipe, shelf);
  expect([...rule.barred].sort()).toEqual(blacks);
  expect(rule).toMatchObject({ allowed: [], why: null });
});

test.each<[string, Lab]>([
  ['white', [88, 0, 4]],
  ['grey', [50, 0, 2]],
  ['black', [18, 0, 1]],
  ['brown', [35, 12, 18]],
])('black may deepen a %s cloth', (family, local) => {
  const rule = blackRule(local, recipe, shelf);
  expect([...rule.allowed].sort()).toEqual(blacks);
  expect(rule).toMatchObject({ barred: [], why: `${family} cloth` });
});

test('black may stay where the local colour holds it, and where the painter insists', () => {
  const held = [...recipe, { pigment: 'bone_black', share: 0.1 }];
  expect(blackRule(BLUE, held, shelf)).toMatchObject({
    allowed: ['bone_black'],
    barred: blacks.filter((id) => id !== 'bone_black'),
    why: 'its local colour holds it',
  });
  expect(blackRule(BLUE, recipe, shelf, { insist: true }).barred).toEqual([]);
});

test('charcoal is a cool tint only with as much white', () => {
  const tint = (share: number) => [
    { pigment: 'charcoal_black', share },
    { pigment: 'lead_white', share: 0.4 },
  ];
  expect(outsideRule(tint(0.4), ['charcoal_black'], shelf)).toEqual([]);
  expect(outsideRule(tint(0.5), ['charcoal_black'], shelf)).toEqual(['charcoal_black']);
});
