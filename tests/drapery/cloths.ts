import { expect } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { chroma, hueTurnDeg, type Lab } from '../../src/colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../../src/colour/oklab.ts';
import type { Cloth, ClothRequest, GarmentRequest } from '../../src/drapery/cloth-types.ts';
import { drape } from '../../src/drapery/garment.ts';
import {
  glazedColour,
  internalReflectance,
  THICKEST_MM,
  THINNEST_MM,
} from '../../src/drapery/glaze-selection.ts';
import { barredIn } from '../../src/drapery/ladder-search.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { ofParts, ofShares, predictColour } from '../../src/mixture/predict.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';

/** Under this chroma there is no hue to hold. */
const NO_HUE = 8;
const hasHue = (lab: Lab) => chroma(lab) >= NO_HUE;
const hue = (lab: Lab) => oklabHueDeg(oklabOfLab(lab))!;
const turnDeg = (from: Lab, to: Lab) => Math.abs(hueTurnDeg(hue(from), hue(to)));

/** What holds of every cloth of a shelf, and of each way to model it. */
export function clothsOf(shelf: Shelf) {
  /** Comparisons of two hues that were made: those of greys are none. */
  const count = { held: 0 };

  function draped(wish: GarmentRequest) {
    const made = drape(wish, shelf);
    if (!made.ok) throw new Error(`${JSON.stringify(wish)}: ${JSON.stringify(made.fault)}`);
    return made.value;
  }

  /** What is seen of a fold in whole parts. */
  function inParts({ mixture, glaze }: Cloth['folds'][number]): Lab {
    if (glaze === null) return predictColour(ofParts(mixture.parts), shelf);
    const paint = shelf.paints.find(({ pigment }) => pigment === glaze.pigment)!;
    return glazedColour(paint, glaze.filmMm, internalReflectance(mixture.parts, shelf), shelf);
  }

  /** Each fold that has a hue keeps that of `from`, where it has one itself. */
  function expectHeld(from: Lab, folds: readonly { readonly lab: Lab }[]) {
    for (const { lab } of folds.filter((fold) => hasHue(fold.lab) && hasHue(from))) {
      count.held++;
      expect(turnDeg(from, lab)).toBeLessThanOrEqual(5);
    }
  }

  function expectCloth(cloth: Cloth, wish: ClothRequest) {
    expect(cloth.folds.map(({ step }) => step)).toEqual(LADDER_STEPS);
    const seen = cloth.folds.map(({ lab }) => lab[0]);
    const parts = cloth.folds.map((fold) => inParts(fold)[0]);
    for (let i = 1; i < 6; i++) {
      expect(seen[i]!, `${seen}`).toBeLessThan(seen[i - 1]!);
      expect(parts[i]!, `${parts}`).toBeLessThan(parts[i - 1]!);
    }
    const all = [...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])];
    for (const fold of all) {
      if (fold.glaze === null)
        expect(
          deltaE00(predictColour(ofShares(fold.mixture.recipe), shelf), fold.lab),
        ).toBeLessThan(1e-6);
      expect(fold.mixture.recipe.length).toBeLessThanOrEqual(4);
      expect(barredIn(fold.mixture, cloth.black.barred, shelf)).toBe(false);
      for (const { pigment } of fold.mixture.recipe) expect(cloth.pigments).toContain(pigment);
    }
    expect(cloth.folds.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    if (wish.neighbour) {
      expect(cloth.reflected!.lab[0]).toBeLessThan(seen[3]!);
      expect(cloth.reflected!.lab[0]).toBeGreaterThan(seen[4]!);
    } else expect(cloth.reflected).toBeNull();
  }

  return {
    count,
    draped,
    expectHeld,
    /** Lightness falls, hue is held, no black outside the rule. */
    expectDeepened(wish: ClothRequest) {
      const cloth = draped(wish);
      expectCloth(cloth, wish);
      expectHeld(cloth.folds[2]!.lab, cloth.folds.slice(3));
    },
    /** Its shadows hold their own hue. */
    expectShot(wish: ClothRequest) {
      const cloth = draped(wish);
      expectCloth(cloth, wish);
      expectHeld(wish.shadows!, cloth.folds.slice(4));
    },
    /** Six lightnesses, each with its own hue. */
    expectNature(wish: ClothRequest) {
      expectCloth(draped(wish), wish);
    },
    /** The film grows thicker into the folds; a glaze of another hue turns what lies under it, which is said. */
    expectGlazed(wish: ClothRequest) {
      const cloth = draped(wish);
      expectCloth(cloth, wish);
      const films = cloth.folds.map((fold) => fold.glaze?.filmMm ?? 0);
      expect(films[0]).toBe(0);
      for (let i = 1; i < 6; i++) {
        expect(films[i]!).toBeGreaterThan(films[i - 1]!);
        expect(films[i]!).toBeGreaterThanOrEqual(THINNEST_MM);
        expect(films[i]!).toBeLessThanOrEqual(THICKEST_MM);
      }
      const local = cloth.folds[2]!.lab;
      const hued = cloth.folds.slice(3).filter(({ lab }) => hasHue(lab) && hasHue(local));
      count.held += hued.length;
      const lost = cloth.remarks.find((one) => one.code === 'hue-lost');
      for (const { step } of hued.filter(({ lab }) => turnDeg(local, lab) > 5))
        expect(lost?.steps).toContain(step);
    },
  };
}
