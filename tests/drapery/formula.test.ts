import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { formulaBody } from '../../src/book/schema/drapery.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { blacksOf } from '../../src/drapery/black-rule.ts';
import { formulaOfPiles, pigmentsIn } from '../../src/drapery/formula.ts';
import { glazedColour, internalReflectance } from '../../src/drapery/glaze-selection.ts';
import { SHIPPED_FORMULAS, workedFormula } from '../../src/drapery/shipped-formulas.ts';
import { ofShares, predictColour } from '../../src/mixture/predict.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { pileOf } from '../harmony/piles.ts';

const shelf = starterShelf();
const worked = SHIPPED_FORMULAS.map((one) => {
  const made = workedFormula(one, shelf);
  if (!made.ok) throw new Error(`${one.name}: ${JSON.stringify(made.fault)}`);
  return made.value;
});
const named = (name: RegExp) => worked.find((one) => name.test(one.name))!;
const seen = (formula: (typeof worked)[number]) =>
  formula.passages.map(({ layers }) => layers.at(-1)!.mixture.lab);

describe('the formulas that come with Kingcup', () => {
  test('six of them, every colour what the optics say, lightness falling', () => {
    expect(worked).toHaveLength(6);
    let glazes = 0;
    for (const formula of worked) {
      for (const { layers } of formula.passages) {
        const [body, glaze] = [layers[0]!, layers[1]];
        expect(
          deltaE00(predictColour(ofShares(body.mixture.recipe), shelf), body.mixture.lab),
        ).toBeLessThan(1e-6);
        if (!glaze) continue;
        glazes++;
        const paint = shelf.paints.find(
          ({ pigment }) => pigment === glaze.mixture.recipe[0]!.pigment,
        )!;
        const over = glazedColour(
          paint,
          glaze.filmMm!,
          internalReflectance(body.mixture.recipe, shelf),
          shelf,
        );
        expect(deltaE00(over, glaze.mixture.lab)).toBeLessThan(1e-6);
      }
      const L = seen(formula)
        .slice(0, 6)
        .map((lab) => lab[0]);
      for (let i = 1; i < 6; i++) expect(L[i]!).toBeLessThan(L[i - 1]!);
    }
    expect(glazes).toBeGreaterThan(0);
  });

  test('the slate blue is charcoal black and white alone, and bluish', () => {
    expect(pigmentsIn(named(/slate/i)).toSorted()).toEqual(['charcoal_black', 'lead_white']);
    for (const [, , b] of seen(named(/slate/i)).slice(1)) expect(b).toBeLessThan(0);
  });

  test('white and black cloth may take black, red, green and shot silk take none', () => {
    const blacks = blacksOf(shelf);
    const white = (formula: (typeof worked)[number]) =>
      formula.passages.every(({ layers }) =>
        layers.every(({ mixture }) => {
          const of = (name: string) =>
            mixture.recipe.find(({ pigment }) => pigment === name)?.share ?? 0;
          return blacks.every((black) =>
            black === 'charcoal_black' ? of(black) <= of('lead_white') : of(black) === 0,
          );
        }),
      );
    for (const name of [/red/i, /green/i, /shot/i]) expect(white(named(name))).toBe(true);
    expect(pigmentsIn(named(/black/i)).some((pigment) => blacks.includes(pigment))).toBe(true);
  });

  test('the red is glazed, thicker into the folds; its gleam is bare', () => {
    const films = named(/red/i).passages.map(({ layers }) => layers[1]?.filmMm ?? 0);
    expect(films[0]).toBe(0);
    expect(films.toSorted((a, b) => a - b)).toEqual(films);
    expect(films[5]).toBeGreaterThan(films[2]!);
  });

  test('the book takes them as they are', () => {
    for (const formula of worked)
      expect(v.is(formulaBody, { ...formula, date: '2026-05-01', from: null })).toBe(true);
  });

  test('a formula by hand, of piles', () => {
    const made = formulaOfPiles(
      [{ name: 'lit side', mixture: pileOf(shelf, { lead_white: 3, bone_black: 1 }) }],
      {
        name: 'pewter jug',
        note: '',
        subject: 'jug',
      },
    );
    expect(made.passages[0]!.layers[0]!.film).toBe('body colour');
    expect(pigmentsIn(made).toSorted()).toEqual(['bone_black', 'lead_white']);
  });
});
