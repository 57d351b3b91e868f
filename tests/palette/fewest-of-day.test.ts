import { expect, test } from 'vitest';
import { fewestOfDay } from '../../src/palette/fewest-of-day.ts';
import { askedOf, passageOf, pileOf, planned, shelfWith } from './made.ts';

test('what a shorter set costs, pile by pile, among the pigments of the day', () => {
  const studio = {
    shelf: shelfWith('lead_white', 'yellow_ochre', 'red_earth', 'bone_black', 'vermilion'),
    stock: null,
  };
  const day = planned(
    askedOf([
      passageOf('p', [
        pileOf('grey', { lead_white: 4, bone_black: 1 }),
        pileOf('buff', { lead_white: 2, yellow_ochre: 1 }),
        pileOf('brick', { red_earth: 1 }),
      ]),
    ]),
    studio,
  );
  const found = fewestOfDay(day, studio);
  if (!found.ok) throw new Error(found.fault.code);
  const { curve, piles, pigments } = found.value;
  expect(piles.map(({ name }) => name)).toEqual(['grey', 'buff', 'brick']);
  // Vermilion lies on the shelf, but not on the palette.
  expect(pigments).toEqual(['lead_white', 'yellow_ochre', 'red_earth', 'bone_black']);
  expect(curve.map((step) => step.pigments.length)).toEqual([1, 2, 3, 4]);
  for (const step of curve) {
    expect(step.deltaE00).toHaveLength(3);
    for (const pigment of step.pigments) expect(pigments).toContain(pigment);
  }
  const worst = curve.map((step) => step.worst);
  expect(worst.at(-1)).toBeLessThan(0.1);
  expect(worst[0]).toBeGreaterThan(10);
});
