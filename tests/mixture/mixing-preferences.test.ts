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

describe('a painter’s wish', () => {
  test('nothing dangerous comes into any mixture that is asked to be without it', () => {
    for (const pigment of pigmentsUsed({ hazard: 'toxic' }))
      expect(['low', 'caution']).toContain(pigmentOf(pigment)!.hazard.level);
  });

  test('a lot of a pigment is as dangerous as the pigment', () => {
    const lead = shelf.paints.find((paint) => paint.pigment === 'lead_white')!;
    const lots = { ...shelf, paints: [{ ...lead, pigment: 'lead_white#lot-7' }] };
    expect(constraintsOf(lots, { ...DEFAULT_PREFERENCES, hazard: 'toxic' }).leaveOut).toEqual([
      'lead_white#lot-7',
    ]);
  });

  test('no black, and what is left out or the only ones at hand', () => {
    for (const pigment of pigmentsUsed({ noBlack: true }))
      expect(pigmentOf(pigment)!.family).not.toBe('black');
    expect(pigmentsUsed({ leaveOut: ['raw_umber'] })).not.toContain('raw_umber');
    const only = ['lead_white', 'red_earth', 'yellow_ochre'];
    for (const pigment of pigmentsUsed({ only })) expect(only).toContain(pigment);
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
