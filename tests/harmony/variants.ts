import fc from 'fast-check';
import { expect, test } from 'vitest';
import { warmCool } from '../../src/colour/appearance.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { chroma, hueTurnDeg } from '../../src/colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../../src/colour/oklab.ts';
import { variantOf } from '../../src/harmony/mixed-variant.ts';
import { AMOUNTS, VARIANT_WAYS } from '../../src/harmony/variant-target.ts';
import { limitWords } from '../../src/messages/variant-limits.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { OPPOSITE } from './opposite.ts';
import { labOfRecipe, pilesOf } from './piles.ts';

const shelf = starterShelf();
const value = <T>(result: { ok: true; value: T } | { ok: false; fault: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
};
const piles = pilesOf(shelf);
const way = fc.constantFrom(...VARIANT_WAYS);
const amount = fc.constantFrom(...AMOUNTS);

/**
 * What holds of the variants of any pile of the starter shelf.
 * @param runs how many are drawn by lot for each property
 */
export function variantsOverTheReach(runs: {
  readonly signs: number;
  readonly hues: number;
  readonly returns: number;
}): void {
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
      { seed: 11, numRuns: runs.signs, endOnFailure: true },
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
      { seed: 12, numRuns: runs.hues, endOnFailure: true },
    );
    console.log(`${held} hues held`);
    expect(held).toBeGreaterThanOrEqual(0.35 * runs.hues);
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
      { seed: 13, numRuns: runs.returns, endOnFailure: true },
    );
    console.log(`there and back: ${counted} counted, at most ${most.toFixed(2)}`);
    expect(counted).toBeGreaterThan(runs.returns / 3);
  });
}
