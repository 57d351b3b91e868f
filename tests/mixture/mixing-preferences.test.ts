import { describe, expect, test } from 'vitest';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import {
  constraintsOf,
  DEFAULT_PREFERENCES,
  type MixingPreferences,
  mixOptionsOf,
} from '../../src/mixture/mixing-preferences.ts';
import { pairWarningOf, pigmentOf } from '../../src/pigment/pigment-facts.ts';
import { starterShelf, wholeShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const TARGETS = [
  [62, 18, 34],
  [45, -12, -20],
  [30, 5, 4],
] as const;

const pigmentsUsed = (wish: Partial<MixingPreferences>): Set<string> => {
  const found = findMixtures(
    TARGETS,
    shelf,
    mixOptionsOf(shelf, { ...DEFAULT_PREFERENCES, ...wish }),
  );
  if (!found.ok) throw new Error(found.fault.code);
  const all = found.value.flatMap((one) => [one, one.simplest, ...one.alternatives]);
  return new Set(all.flatMap(({ parts, recipe }) => [...parts, ...recipe].map((p) => p.pigment)));
};

/** What a wish keeps out, and that the shelf would use it otherwise. */
function expectKeptOut(
  wish: Partial<MixingPreferences>,
  isMeant: (pigment: string) => boolean,
): void {
  expect([...pigmentsUsed({})].filter(isMeant).length).toBeGreaterThan(0);
  const used = [...pigmentsUsed(wish)];
  expect(used.length).toBeGreaterThan(2);
  expect(used.filter(isMeant)).toEqual([]);
}

describe('a painter’s wish', () => {
  test('nothing dangerous comes into any mixture that is asked to be without it', () => {
    expectKeptOut({ hazard: 'toxic' }, (pigment) =>
      pigmentOf(pigment)!.hazard.level.includes('toxic'),
    );
  });

  test('a lot of a pigment is as dangerous as the pigment', () => {
    const lead = shelf.paints.find((paint) => paint.pigment === 'lead_white')!;
    const lots = { ...shelf, paints: [{ ...lead, pigment: 'lead_white#lot-7' }] };
    expect(constraintsOf(lots, { ...DEFAULT_PREFERENCES, hazard: 'toxic' }).leaveOut).toEqual([
      'lead_white#lot-7',
    ]);
  });

  test('no black, and what is left out or the only ones at hand', () => {
    expectKeptOut({ noBlack: true }, (pigment) => pigmentOf(pigment)!.family === 'black');
    expectKeptOut({ leaveOut: ['ultramarine'] }, (pigment) => pigment === 'ultramarine');
    const only = ['lead_white', 'red_earth', 'yellow_ochre'];
    expect([...pigmentsUsed({ only })].toSorted()).toEqual(only);
  });

  test('what is known of pigments holds without being asked for', () => {
    const whole = wholeShelf();
    const { apart, oneWhite } = constraintsOf(whole, DEFAULT_PREFERENCES);
    for (const [a, b] of apart!) expect(pairWarningOf(a, b)?.severity).toBe('avoid');
    expect(apart!.length).toBeGreaterThan(0);
    expect(oneWhite).toContain('lead_white');
  });

  test('of a stranger’s file nothing is assumed', () => {
    const strange = {
      ...shelf,
      paints: shelf.paints.map((paint, i) => ({ ...paint, pigment: `white no. ${i}` })),
    };
    const { apart, oneWhite } = constraintsOf(strange, DEFAULT_PREFERENCES);
    expect([apart, oneWhite]).toEqual([[], []]);
  });
});
