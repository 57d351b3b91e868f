import { describe, expect, test } from 'vitest';
import { originOf, variantOf, variantsOf } from '../../src/harmony/mixed-variant.ts';
import { VARIANT_WAYS } from '../../src/harmony/variant-target.ts';
import { pileChangeWords } from '../../src/messages/pile-change-text.ts';
import { limitWords } from '../../src/messages/variant-limits.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { pileOf } from './piles.ts';
import { variantsOverTheReach } from './variants.ts';

const shelf = starterShelf();
const value = <T>(result: { ok: true; value: T } | { ok: false; fault: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
};

// A few piles by lot; more of them are in tests/simulation/variant.test.ts.
variantsOverTheReach({ signs: 24, hues: 20, returns: 24 });

describe('the pile', () => {
  test('a red earth let down, made deeper, stays of its own pigments', () => {
    const mixture = pileOf(shelf, { red_earth: 1, yellow_ochre: 2, raw_umber: 0.2, lead_white: 3 });
    const made = value(variantOf({ lab: mixture.lab, mixture }, 'deeper', 'middle', shelf));
    expect(made.samePigments).toBe(true);
    expect(pileChangeWords(made.pile, (pigment) => pigment.replace('_', ' '))).toMatch(
      /less lead white|raw umber more/,
    );
    expect(made.seen).toMatch(/darker/);
  });

  // A pile of four has three proportions to turn, as a colour has three axes; a pile of two has one.
  test('a pile of four makes nearly all of its small variants of its own pigments', () => {
    let [whole, same] = [0, 0];
    for (const lab of [
      [62, 10, 24],
      [50, 4, 10],
      [45, 18, 16],
      [58, -6, -8],
    ] as const) {
      const origin = value(originOf(lab, shelf));
      for (const along of VARIANT_WAYS) {
        const made = value(variantOf(origin, along, 'small', shelf));
        whole += Number(made.granted === 'whole');
        same += Number(made.granted === 'whole' && made.samePigments);
      }
    }
    console.log(`small variants of piles of four: ${same} of ${whole} of their own pigments`);
    expect(whole).toBeGreaterThan(18);
    expect(same / whole).toBeGreaterThan(0.9);
  });

  test('vermilion pure cannot be brighter, and that is said', () => {
    const mixture = pileOf(shelf, { vermilion: 1 });
    const made = value(variantOf({ lab: mixture.lab, mixture }, 'brighter', 'middle', shelf));
    expect(made.granted).toBe('nothing');
    expect(limitWords(made)).toMatch(/no brighter/);
  });

  test('a whole harmony is altered colour by colour', () => {
    const origins = (
      [
        [60, -5, -20],
        [80, 0, 5],
      ] as const
    ).map((lab) => value(originOf(lab, shelf)));
    const seen: number[] = [];
    const made = value(
      variantsOf(origins, [{ way: 'deeper', amount: 'small' }], shelf, {
        onProgress: (done) => seen.push(done),
      }),
    );
    expect(made.map(({ mixture }) => Math.round(mixture.lab[0]))).toEqual([56, 76]);
    expect(seen).toEqual([0.5, 1]);
  });

  test('the studio’s constraints hold, and a contradiction is a fault', () => {
    const origin = value(originOf([60, -5, -20], shelf));
    const constraints = { leaveOut: ['ultramarine'] };
    const used = (one: ReturnType<typeof variantOf>) =>
      value(one).mixture.recipe.map(({ pigment }) => pigment);
    const isLeftOut = (pigment: string) => constraints.leaveOut.includes(pigment);
    expect(used(variantOf(origin, 'duller', 'middle', shelf)).filter(isLeftOut)).not.toEqual([]);
    const made = variantOf(origin, 'duller', 'middle', shelf, { constraints });
    expect(value(made).granted).toBe('whole');
    expect(used(made).length).toBeGreaterThan(1);
    expect(used(made).filter(isLeftOut)).toEqual([]);
    // Without the two blues nothing can be done: the pile stays as it was.
    const noBlue = { constraints: { leaveOut: ['ultramarine', 'azurite'] } };
    expect(value(variantOf(origin, 'duller', 'large', shelf, noBlue)).granted).toBe('nothing');
    const none = variantOf(origin, 'duller', 'large', shelf, { constraints: { inStock: [] } });
    expect(none).toEqual({ ok: false, fault: { code: 'nothing-left' } });
    expect(variantOf(origin, 'duller', 'large', shelf, { stopped: () => true })).toEqual({
      ok: false,
      fault: { code: 'stopped' },
    });
  });
});
