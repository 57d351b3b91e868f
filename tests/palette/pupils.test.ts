import { expect, test } from 'vitest';
import { plainNumber } from '../../src/number-format.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { askedOf, passageOf, pileOf, planned, shelfWith } from './made.ts';

const studio = {
  shelf: shelfWith('lead_white', 'vermilion', 'titanium_white', 'red_earth', 'yellow_ochre'),
  stock: null,
};
const passages = [
  passageOf('Cloth', [
    pileOf('coral', { lead_white: 1, vermilion: 1 }),
    pileOf('sand', { titanium_white: 2, yellow_ochre: 1 }),
  ]),
];
const sheet = (pupils: boolean) => {
  const day = planned(askedOf(passages, { pupils }), studio);
  const keys = day.palettes[0]!.pigments.map(({ key }) => key);
  return { keys, text: JSON.stringify(sheetOf(day, 0, studio, plainNumber)) };
};

// By design: where pupils under age are about, another mixture stands in for every toxic one.
test('with pupils about nothing toxic comes on the sheet, and every pile is still there', () => {
  const { keys, text } = sheet(true);
  expect(keys).not.toContain('lead_white');
  expect(keys).not.toContain('vermilion');
  expect(keys.length).toBeGreaterThan(1);
  expect(text).not.toMatch(/lead white|vermilion/i);
  expect(text).toMatch(/coral.*sand|sand.*coral/);
});

test('without them the pile is mixed as it was planned, and its dangers are named', () => {
  const { keys, text } = sheet(false);
  expect(keys).toEqual(expect.arrayContaining(['lead_white', 'vermilion']));
  expect(text).toMatch(/mercury/i);
});
