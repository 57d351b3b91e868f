import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { paletteFaultWords } from '../../src/messages/palette-faults.ts';
import { plainNumber } from '../../src/number-format.ts';
import { FILM_WORDS, FILMS } from '../../src/palette/film-kinds.ts';
import { amountOf, type PileAmount } from '../../src/palette/pile-quantity.ts';
import { cm3Up, gramsUp, oilCm3Down, oilDown } from '../../src/palette/rounded-amounts.ts';
import { weigh } from '../../src/palette/stock-supply.ts';
import { pasteOf } from '../../src/pigment/paste.ts';
import { pigmentGrind } from '../../src/pigment/pigment-grind.ts';
import { evenly } from '../evenly.ts';
import { dice, entryOf, passageOf, pileOf, randomDay } from './made.ts';

const PIGMENTS = [
  'lead_white',
  'yellow_ochre',
  'madder_lake',
  'azurite',
  'raw_umber',
  'bone_black',
];
const amount = (...of: Parameters<typeof amountOf>): PileAmount => {
  const found = amountOf(...of);
  if (!found.ok)
    throw new Error(found.fault.map((one) => paletteFaultWords(one, plainNumber)).join(' '));
  return found.value;
};

describe('100 random passages', () => {
  const d = dice(11);
  const passages = Array.from({ length: 60 }, () => randomDay(d, PIGMENTS).palettes)
    .flat()
    .flatMap((palette) => palette.passages)
    .slice(0, 100);
  const piles = passages.flatMap((passage) => passage.piles.map((pile) => ({ pile, passage })));

  test('there are a hundred', () => expect(passages).toHaveLength(100));

  test('pigments and spare oil sum to what is prepared, to 1e-9', () => {
    for (const { pile, passage } of piles) {
      const { prepare, paste, spareOil, pigments } = amount(pile, passage);
      const sum = pigments.reduce((all, { cm3 }) => all + cm3, 0);
      expect(Math.abs(sum - paste)).toBeLessThan(1e-9 * paste);
      expect(Math.abs(paste + spareOil - prepare)).toBeLessThan(1e-9 * prepare);
    }
  });

  test('volumes and grams agree both ways', () => {
    for (const { pile, passage } of piles)
      for (const { pigment, cm3 } of amount(pile, passage).pigments) {
        const grind = pigmentGrind(pigment);
        if (!grind.ok) throw new Error(pigment);
        const tube = weigh(null, pigment, entryOf(pigment), cm3);
        const jar = weigh(null, pigment, entryOf(pigment, { form: 'powder' }), cm3);
        if (tube.as !== 'paste' || jar.as !== 'powder') throw new Error(pigment);
        const { density, oilDensity = 0.93 } = grind.value;
        expect(tube.grams! / pasteOf(grind.value).density).toBeCloseTo(cm3, 9);
        expect(jar.pigmentGrams / density + jar.oilGrams / oilDensity).toBeCloseTo(cm3, 9);
        expect(jar.pigmentGrams + jar.oilGrams).toBeCloseTo(tube.grams!, 9);
      }
  });

  test('what is printed of paint is never below need, of oil never above', () => {
    for (const { pile, passage } of piles) {
      const { prepare, need, spareOil } = amount(pile, passage);
      expect(prepare).toBeGreaterThan(need);
      expect(cm3Up(prepare)).toBeGreaterThanOrEqual(prepare - 1e-9);
      expect(oilCm3Down(spareOil)).toBeLessThanOrEqual(spareOil + 1e-9);
    }
  });
});

test('rounding errs on the side that is asked for, by less than a step', () => {
  const grams = evenly(0.001, 5000);
  fc.assert(
    fc.property(grams, (value) => {
      for (const up of [cm3Up, gramsUp]) {
        expect(up(value)).toBeGreaterThanOrEqual(value - 1e-6);
        expect(up(value)).toBeLessThan(value + Math.max(0.1, 0.05 * value) + 1e-6);
      }
      for (const down of [oilDown, oilCm3Down]) {
        expect(down(value)).toBeLessThanOrEqual(value + 1e-6);
        expect(down(value)).toBeGreaterThan(value - Math.max(0.1, 0.05 * value) - 1e-6);
      }
    }),
    { seed: 1 },
  );
  expect([cm3Up(7.1), gramsUp(54.73), oilDown(6.3), oilDown(6.29)]).toEqual([7.1, 54.8, 6.3, 6.2]);
});

test('a share of the canvas is the area that it is', () => {
  const pile = pileOf('sky', { lead_white: 1 }, { cover: { share: 0.25 } });
  const canvas = { widthCm: 60, heightCm: 40 };
  const asked = { ...passageOf('Sky', [pile]), canvas };
  const same = pileOf('sky', { lead_white: 1 }, { cover: { cm2: 600 } });
  expect(amount(pile, asked)).toEqual(amount(same, asked));
});

test('coats multiply the film, and not the heap', () => {
  const one = amount(pileOf('a', { lead_white: 1 }), passageOf('p', []));
  const three = amount(pileOf('a', { lead_white: 1 }, { coats: 3 }), passageOf('p', []));
  expect(three.net).toBeCloseTo(3 * one.net, 12);
  expect(three.prepare - 0.5).toBeCloseTo(3 * (one.prepare - 0.5), 12);
});

test('a let-down is resolved into its pigment and its white', () => {
  const pile = pileOf(
    'blue',
    { lead_white: 10, prussian_blue: 2 },
    {
      letDowns: [{ pigment: 'prussian_blue', white: 'lead_white', parts: 1, whiteParts: 10 }],
      parts: [
        { pigment: 'lead_white', parts: 10 },
        { pigment: 'prussian_blue', parts: 2, letDown: true },
      ],
    },
  );
  const { pigments, paste, letDowns } = amount(pile, passageOf('p', []));
  const blue = pigments.find(({ pigment }) => pigment === 'prussian_blue')!;
  expect(blue.cm3 / paste).toBeCloseTo(2 / 12 / 11, 12);
  expect(letDowns[0]).toMatchObject({ pigment: 'prussian_blue', whiteParts: 10 });
  expect(letDowns[0]!.cm3 / paste).toBeCloseTo(2 / 12, 12);
});

test('every film has an own thickness within its range', () => {
  expect(FILM_WORDS.length).toBeGreaterThan(2);
  for (const film of FILM_WORDS) {
    const { least, usual, most } = FILMS[film];
    expect(least).toBeGreaterThan(0);
    expect(least).toBeLessThanOrEqual(usual);
    expect(usual).toBeLessThanOrEqual(most);
  }
});

test.each([
  ['no area', { cover: { cm2: 0 } }, 'area-none'],
  ['a negative area', { cover: { cm2: -5 } }, 'area-none'],
  ['an area that is no number', { cover: { cm2: Number.NaN } }, 'area-none'],
  ['a huge area', { cover: { cm2: 5e6 } }, 'area-huge'],
  ['no share', { cover: { share: 0 } }, 'area-share'],
  ['more than the canvas', { cover: { share: 1.2 } }, 'area-share'],
  ['a share of no canvas', { cover: { share: 0.2 } }, 'canvas-missing'],
  ['a negative film', { filmUm: -10 }, 'film-not-a-thickness'],
  ['no film', { filmUm: 0 }, 'film-not-a-thickness'],
  ['a film of millimetres', { filmUm: 40_000 }, 'film-huge'],
  ['no coat', { coats: 0 }, 'coats'],
  ['half a coat', { coats: 1.5 }, 'coats'],
  ['a negative tooth', { tooth: -0.1 }, 'allowance'],
  ['waste past reason', { waste: 9 }, 'allowance'],
  ['a heap that is no number', { heapCm3: Number.NaN }, 'allowance'],
  ['no pigment', { parts: [] }, 'parts'],
  ['parts of 0', { parts: [{ pigment: 'lead_white', parts: 0 }] }, 'parts'],
  [
    'an untold let-down',
    { parts: [{ pigment: 'lead_white', parts: 1, letDown: true }] },
    'letdown-missing',
  ],
])('%s is refused with a sentence', (_, more, code) => {
  const found = amountOf(pileOf('foam', { lead_white: 1 }, more), { name: 'Water' });
  if (found.ok) throw new Error('it was accepted');
  expect(found.fault.map((fault) => fault.code)).toContain(code);
  for (const fault of found.fault)
    expect(paletteFaultWords(fault, plainNumber)).toMatch(/foam.*\.$/);
});
