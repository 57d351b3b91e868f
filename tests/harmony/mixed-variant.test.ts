import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { warmCool } from '../../src/colour/appearance.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { chroma, hueTurnDeg } from '../../src/colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../../src/colour/oklab.ts';
import { originOf, variantOf, variantsOf } from '../../src/harmony/mixed-variant.ts';
import { AMOUNTS, OPPOSITE, VARIANT_WAYS } from '../../src/harmony/variant-target.ts';
import { limitWords } from '../../src/messages/variant-limits.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { labOfRecipe, pileOf, pilesOf, runs } from './piles.ts';

const shelf = starterShelf();
const value = <T>(result: { ok: true; value: T } | { ok: false; fault: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
};
const piles = pilesOf(shelf);
const way = fc.constantFrom(...VARIANT_WAYS);
const amount = fc.constantFrom(...AMOUNTS);

describe('over the whole reach', () => {
  test('the sign holds on the colour that is reached, and the pile is what it says', () => {
    let [whole, part, nothing, same] = [0, 0, 0, 0];
    fc.assert(
      fc.property(piles, way, amount, (mixture, along, by) => {
        const origin = { lab: mixture.lab, mixture };
        const made = value(variantOf(origin, along, by, shelf));
        const [from, to] = [mixture.lab, made.mixture.lab];
        if (along === 'warmer') expect(warmCool(to)).toBeGreaterThanOrEqual(warmCool(from));
        if (along === 'cooler') expect(warmCool(to)).toBeLessThanOrEqual(warmCool(from));
        if (along === 'lighter') expect(to[0]).toBeGreaterThanOrEqual(from[0]);
        if (along === 'deeper') expect(to[0]).toBeLessThanOrEqual(from[0]);
        if (along === 'brighter') expect(chroma(to)).toBeGreaterThanOrEqual(chroma(from));
        if (along === 'duller') expect(chroma(to)).toBeLessThanOrEqual(chroma(from));
        expect(deltaE00(labOfRecipe(shelf, made.mixture.recipe), to)).toBeLessThan(1e-6);
        expect(deltaE00(made.wish, to)).toBeCloseTo(made.mixture.deltaE00, 9);
        // Lightness is the axis of two ways only; the others keep it.
        if (along !== 'lighter' && along !== 'deeper')
          expect(deltaE00([to[0], 0, 0], [from[0], 0, 0])).toBeLessThanOrEqual(1);
        // Said, not faked: what is not whole has words; what does nothing keeps its pile.
        if (made.granted !== 'whole') expect(limitWords(made)).not.toBe('');
        if (made.granted === 'nothing') expect(made.mixture.recipe).toEqual(mixture.recipe);
        whole += Number(made.granted === 'whole');
        part += Number(made.granted === 'part');
        nothing += Number(made.granted === 'nothing');
        same += Number(made.samePigments);
      }),
      { seed: 11, numRuns: runs(60), endOnFailure: true },
    );
    console.log(`whole ${whole}, part ${part}, nothing ${nothing}; same pigments ${same}`);
    expect(whole).toBeGreaterThan(part + nothing);
  });

  test('hue is held within 5 degrees (OKLab) where lightness or chroma changes', () => {
    let held = 0;
    fc.assert(
      fc.property(
        piles,
        fc.constantFrom('lighter', 'deeper', 'brighter', 'duller'),
        amount,
        (mixture, along, by) => {
          const made = value(variantOf({ lab: mixture.lab, mixture }, along, by, shelf));
          const [from, to] = [mixture.lab, made.mixture.lab];
          // Under this chroma there is no hue to hold.
          if (Math.min(chroma(from), chroma(to)) < 8) return;
          held++;
          const turn = hueTurnDeg(oklabHueDeg(oklabOfLab(from))!, oklabHueDeg(oklabOfLab(to))!);
          expect(Math.abs(turn)).toBeLessThanOrEqual(5);
        },
      ),
      { seed: 12, numRuns: runs(40), endOnFailure: true },
    );
    console.log(`${held} hues held`);
    expect(held).toBeGreaterThanOrEqual(runs(15));
  });

  test('there and back returns within 1 where both are reached and neither stopped', () => {
    let counted = 0;
    let most = 0;
    fc.assert(
      fc.property(piles, way, amount, (mixture, along, by) => {
        const there = value(variantOf({ lab: mixture.lab, mixture }, along, by, shelf));
        if (there.granted !== 'whole' || there.stopped) return;
        const origin = { lab: there.wish, mixture: there.mixture };
        const back = value(variantOf(origin, OPPOSITE[along], by, shelf));
        if (back.granted !== 'whole' || back.stopped) return;
        counted++;
        most = Math.max(most, deltaE00(mixture.lab, back.mixture.lab));
        expect(deltaE00(mixture.lab, back.mixture.lab)).toBeLessThanOrEqual(1);
      }),
      { seed: 13, numRuns: runs(60), endOnFailure: true },
    );
    console.log(`there and back: ${counted} counted, at most ${most.toFixed(2)}`);
    expect(counted).toBeGreaterThan(20);
  });
});

describe('the pile', () => {
  test('a red earth let down, made deeper, stays of its own pigments', () => {
    const mixture = pileOf(shelf, { red_earth: 1, yellow_ochre: 2, raw_umber: 0.2, lead_white: 3 });
    const made = value(variantOf({ lab: mixture.lab, mixture }, 'deeper', 'middle', shelf));
    expect(made.samePigments).toBe(true);
    expect(made.pile).toMatch(/less lead white|raw umber more/);
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
