import { expect, test } from 'vitest';
import { formulaOfPiles } from '../../src/drapery/formula.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import type { Mixture } from '../../src/mixture/mixture-types.ts';
import { pilePartsOf } from '../../src/mixture/pile-parts.ts';
import { pileFromMixture, pilesOfFormula } from '../../src/palette/piles-from-recipes.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { askedOf, passageOf, planned, STARTER } from './made.ts';

const MIXTURE: Mixture = {
  recipe: [
    { pigment: 'lead_white', share: 0.97 },
    { pigment: 'indigo', share: 0.03 },
  ],
  lab: [80, -4, -8],
  deltaE00: 0.1,
  reachable: true,
  parts: [
    { pigment: 'lead_white', parts: 31 },
    { pigment: 'indigo', parts: 1 },
  ],
  partsLab: [80.5, -4, -8],
  partsDeltaE00: 0.4,
};

test('whole parts where there are some, let-downs before them, shares where there is nothing else', () => {
  expect(pilePartsOf(MIXTURE)).toMatchObject({ parts: MIXTURE.parts, lab: MIXTURE.partsLab });
  const letDown = {
    letDowns: [{ pigment: 'indigo', white: 'lead_white', parts: 1 as const, whiteParts: 10 }],
    parts: [
      { pigment: 'lead_white', parts: 2, letDown: false },
      { pigment: 'indigo', parts: 1, letDown: true },
    ],
    lab: [80.1, -4, -8] as const,
    deltaE00: 0.1,
  };
  expect(pilePartsOf({ ...MIXTURE, letDown })).toEqual({
    parts: letDown.parts,
    letDowns: letDown.letDowns,
    lab: letDown.lab,
  });
  expect(pilePartsOf({ ...MIXTURE, parts: [] }).parts[0]).toMatchObject({ parts: 0.97 });
});

test('a colour that was mixed becomes a pile that can be planned', () => {
  const found = findMixtures([[60, 20, 20]], starterShelf(), { quick: true, alternatives: 0 });
  if (!found.ok) throw new Error(found.fault.code);
  const pile = pileFromMixture({
    id: 'a',
    name: 'rose',
    mixture: found.value[0]!,
    cover: { cm2: 40 },
    film: 'body colour',
    coats: 2,
  });
  const day = planned(askedOf([passageOf('p', [pile])]), STARTER);
  expect(day.palettes[0]!.piles[0]!.lab).toEqual(pile.lab);
});

test('a formula gives a pile a coat', () => {
  const head = { name: 'f', note: '', subject: '' };
  const piles = pilesOfFormula(
    formulaOfPiles(
      [
        { name: 'light', mixture: MIXTURE },
        { name: 'dark', mixture: MIXTURE },
      ],
      head,
    ),
    { cm2: 25 },
    'x',
  );
  expect(piles.map(({ id, name, film }) => [id, name, film])).toEqual([
    ['x-0-0', 'light', 'body colour'],
    ['x-1-0', 'dark', 'body colour'],
  ]);
});
