import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
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
} from '../../src/drapery/glaze-film.ts';
import { barredIn } from '../../src/drapery/ladder-search.ts';
import { STEPS } from '../../src/harmony/harmony.ts';
import { ofParts, ofShares, predictColour } from '../../src/mixture/predict.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { runs } from '../harmony/piles.ts';
import { deepened, glazed, nature, shot } from './wishes.ts';

const shelf = starterShelf();
vi.setConfig({ testTimeout: process.env.KINGCUP_SOAK === '1' ? 3_600_000 : 120_000 });

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

const hue = (lab: Lab) => oklabHueDeg(oklabOfLab(lab));
function expectHeld(from: Lab, to: Lab) {
  if (Math.min(chroma(from), chroma(to)) < 8) return;
  expect(Math.abs(hueTurnDeg(hue(from)!, hue(to)!))).toBeLessThanOrEqual(5);
}

/** What holds of every cloth, whatever its way. */
function expectCloth(cloth: Cloth, wish: ClothRequest) {
  expect(cloth.folds.map(({ step }) => step)).toEqual(STEPS);
  const seen = cloth.folds.map(({ lab }) => lab[0]);
  const parts = cloth.folds.map((fold) => inParts(fold)[0]);
  for (let i = 1; i < 6; i++) {
    expect(seen[i]!, `${seen}`).toBeLessThan(seen[i - 1]!);
    expect(parts[i]!, `${parts}`).toBeLessThan(parts[i - 1]!);
  }
  const all = [...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])];
  for (const fold of all) {
    if (fold.glaze === null)
      expect(deltaE00(predictColour(ofShares(fold.mixture.recipe), shelf), fold.lab)).toBeLessThan(
        1e-6,
      );
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

const isHeld = (from: Lab, to: Lab) =>
  Math.min(chroma(from), chroma(to)) < 8 || Math.abs(hueTurnDeg(hue(from)!, hue(to)!)) <= 5;

// A film as thick as planned turned the second of them by 12 degrees in its shadow.
test.each([
  [40, 46, 20],
  [35, 10, -20],
] as Lab[])('a glaze of its own hue holds it downward: %d, %d, %d', (...lab) => {
  const { folds } = draped({ name: 'a', lab, way: 'underpaint and glaze', stuff: 'satin' });
  for (const fold of folds.slice(3)) expectHeld(folds[2]!.lab, fold.lab);
});

describe('over the whole reach and beyond it', () => {
  test('deepened in its own hue: lightness falls, hue is held, no black outside the rule', () => {
    fc.assert(
      fc.property(deepened(shelf), (wish) => {
        const cloth = draped(wish);
        expectCloth(cloth, wish);
        const local = cloth.folds[2]!.lab;
        for (const { lab } of cloth.folds.slice(3)) expectHeld(local, lab);
      }),
      { seed: 21, numRuns: runs(6), endOnFailure: true },
    );
  });

  test('shot cloth: its shadows hold their own hue', () => {
    fc.assert(
      fc.property(shot(shelf), (wish) => {
        const cloth = draped(wish);
        expectCloth(cloth, wish);
        for (const { lab } of cloth.folds.slice(4)) expectHeld(wish.shadows!, lab);
      }),
      { seed: 22, numRuns: runs(3), endOnFailure: true },
    );
  });

  test('as nature had it: six lightnesses, each with its own hue', () => {
    fc.assert(
      fc.property(nature(shelf), (wish) => {
        const cloth = draped(wish);
        expectCloth(cloth, wish);
      }),
      { seed: 23, numRuns: runs(4), endOnFailure: true },
    );
  });

  test('underpaint and glaze: the film grows thicker into the folds', () => {
    for (const glaze of ['madder_lake', 'ultramarine'])
      fc.assert(
        fc.property(glazed(shelf, glaze), (wish) => {
          const cloth = draped(wish);
          expectCloth(cloth, wish);
          const films = cloth.folds.map((fold) => fold.glaze?.filmMm ?? 0);
          expect(films[0]).toBe(0);
          for (let i = 1; i < 6; i++) {
            expect(films[i]!).toBeGreaterThan(films[i - 1]!);
            expect(films[i]!).toBeGreaterThanOrEqual(THINNEST_MM);
            expect(films[i]!).toBeLessThanOrEqual(THICKEST_MM);
          }
          // A glaze of another hue turns what lies under it: then that is said.
          const turned = cloth.folds
            .slice(3)
            .filter(({ lab }) => !isHeld(cloth.folds[2]!.lab, lab));
          const said = cloth.remarks.find((one) => one.includes('hue cannot be held')) ?? '';
          for (const { step } of turned) expect(said).toContain(step);
        }),
        { seed: 24, numRuns: runs(2), endOnFailure: true },
      );
  });
});
