import { describe, expect, test } from 'vitest';
import { boardsWords } from '../../src/messages/palette-messages.ts';
import { plainNumber } from '../../src/number-format.ts';
import { MOST_MIXED } from '../../src/sheet/boards.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { askedOf, passageOf, pileOf, planned, STARTER } from '../palette/made.ts';

/** Three garments of six folds: more than one palette carries. */
const FOLDS = ['highlight', 'light', 'local colour', 'half-tone', 'shadow', 'deepest fold'];
const garment = (name: string, hue: string) =>
  FOLDS.map((fold, i) => pileOf(`${name}, ${fold}`, { lead_white: 7 - i, [hue]: 1 + i }));
const piles = [
  ...garment('cloak', 'red_earth'),
  ...garment('gown', 'ultramarine'),
  ...garment('kerchief', 'green_earth'),
];
const pure = pileOf('white', { lead_white: 1 });

describe('more than one palette carries', () => {
  const day = planned(askedOf([passageOf('Well', piles)]), STARTER);

  test('is laid on two, with every pile once', () => {
    expect(day.palettes.map(({ name, part, of }) => [name, part, of])).toEqual([
      ['Mill, 1 of 2', 1, 2],
      ['Mill, 2 of 2', 2, 2],
    ]);
    const laid = day.palettes.flatMap(({ piles: here }) => here.map(({ key }) => key));
    expect(laid.toSorted()).toEqual(piles.map(({ id }) => id).toSorted());
    // Eighteen piles, nine on a palette.
    expect(day.palettes.map(({ mixed }) => mixed.length)).toEqual([MOST_MIXED, MOST_MIXED]);
  });

  test('light to dark over both', () => {
    const tints = day.palettes.flatMap(({ mixed }) => mixed.filter(({ tint }) => tint));
    const light = tints.map(({ lab }) => Math.round(lab[0]));
    expect(light.length).toBeGreaterThan(10);
    expect(light).toEqual(light.toSorted((a, b) => b - a));
  });

  test('each has its own white and its own sheet, and both say why', () => {
    for (const [at, palette] of day.palettes.entries()) {
      expect(palette.pigments[0]!.key).toBe('lead_white');
      expect(palette.asked).toBe(0);
      expect(sheetOf(day, at, STARTER, plainNumber).today[0]).toBe(
        '“Mill” is more than one palette carries: it is laid on 2, each with its own sheet.',
      );
      expect(sheetOf(day, at, STARTER, plainNumber)).toMatchObject({ number: at + 1, of: 2 });
    }
  });

  test('an order set by hand goes over both', () => {
    const order = piles.map(({ id }) => id);
    const asked = askedOf([passageOf('Well', piles)]);
    const set = planned({ ...asked, palettes: [{ ...asked.palettes[0]!, order }] }, STARTER);
    expect(set.palettes.flatMap(({ mixed }) => mixed.map(({ key }) => key))).toEqual(order);
  });
});

test('what comes as it is is laid once too', () => {
  const day = planned(askedOf([passageOf('Well', [pure, ...piles])]), STARTER);
  const laid = day.palettes.flatMap(({ piles: here }) => here.map(({ key }) => key));
  expect(laid.toSorted()).toEqual([pure, ...piles].map(({ id }) => id).toSorted());
});

test('what fits stays on one', () => {
  const day = planned(askedOf([passageOf('Well', piles.slice(0, 6))]), STARTER);
  expect(day.palettes.map(({ name }) => name)).toEqual(['Mill']);
  expect(boardsWords(day)).toEqual([]);
});

test('more than a day carries is laid all the same, and told', () => {
  const many = ['a', 'b', 'c'].flatMap((n) =>
    piles.map((one) => ({ ...one, id: n + one.id, name: `${n} ${one.name}` })),
  );
  const day = planned(askedOf([passageOf('Well', many)]), STARTER);
  expect(day.palettes).toHaveLength(6);
  expect(boardsWords(day).at(-1)).toMatch(/^That makes 6 palettes, where a day carries 3: /);
});
