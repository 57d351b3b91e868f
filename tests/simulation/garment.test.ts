import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { clothsOf } from '../drapery/cloths.ts';
import { deepened, glazed, nature, shot } from '../drapery/wishes.ts';
import { runs } from '../harmony/piles.ts';

const shelf = starterShelf();
vi.setConfig({ testTimeout: process.env.KINGCUP_SOAK === '1' ? 3_600_000 : 600_000 });

// Cloths drawn by lot on the whole starter shelf; a few on a smaller one are in
// tests/drapery/garment.test.ts.
describe('over the whole reach and beyond it', () => {
  test('deepened in its own hue: lightness falls, hue is held, no black outside the rule', () => {
    const cloths = clothsOf(shelf);
    fc.assert(fc.property(deepened(shelf), cloths.expectDeepened), {
      seed: 21,
      numRuns: runs(6),
      endOnFailure: true,
    });
    expect(cloths.count.held).toBeGreaterThanOrEqual(runs(6));
  });

  test('shot cloth: its shadows hold their own hue', () => {
    const cloths = clothsOf(shelf);
    fc.assert(fc.property(shot(shelf), cloths.expectShot), {
      seed: 22,
      numRuns: runs(3),
      endOnFailure: true,
    });
    expect(cloths.count.held).toBeGreaterThanOrEqual(runs(3));
  });

  test('as nature had it: six lightnesses, each with its own hue', () => {
    fc.assert(fc.property(nature(shelf), clothsOf(shelf).expectNature), {
      seed: 23,
      numRuns: runs(4),
      endOnFailure: true,
    });
  });

  test.each(['madder_lake', 'ultramarine'])(
    'underpaint and a glaze of %s: the film grows thicker into the folds',
    (glaze) => {
      const cloths = clothsOf(shelf);
      fc.assert(fc.property(glazed(shelf, glaze), cloths.expectGlazed), {
        seed: 24,
        numRuns: runs(2),
        endOnFailure: true,
      });
      expect(cloths.count.held).toBeGreaterThanOrEqual(runs(2));
    },
  );
});

// A film as thick as planned turned the second of them by 12 degrees in its shadow.
test.each([
  [40, 46, 20],
  [35, 10, -20],
] as Lab[])('a glaze of its own hue holds it downward: %d, %d, %d', (...lab) => {
  const { count, draped, expectHeld } = clothsOf(shelf);
  const { folds } = draped({ name: 'a', lab, way: 'underpaint and glaze', stuff: 'satin' });
  expectHeld(folds[2]!.lab, folds.slice(3));
  expect(count.held).toBe(3);
});

// Common practice; Field, Chromatography: keep black out of colour, glaze instead. Red: tests/drapery.
test.each([
  ['blue', [42, 0, -28]],
  ['yellow', [74, 2, 50]],
  ['green', [47, -17, 17]],
] as [string, Lab][])('%s keeps the chroma that black would lose', (name, lab) => {
  const { blackLoss, black } = clothsOf(shelf).draped({
    name,
    lab,
    way: 'deepened in its own hue',
    stuff: 'wool',
  });
  console.log(
    `${name}: chroma ${blackLoss!.chroma.toFixed(1)} in the ${blackLoss!.step}, with ${blackLoss!.black} ${blackLoss!.withBlack.toFixed(1)}`,
  );
  expect(black.why).toBeNull();
  expect(blackLoss!.chroma).toBeGreaterThan(blackLoss!.withBlack);
});

test('shot cloth, pale and red: its shadows hold their own hue', () => {
  const { count, expectShot } = clothsOf(shelf);
  const way = 'shot cloth';
  expectShot({ name: 'cloth', lab: [85, 2, 12], shadows: [40, 45, 25], way, stuff: 'satin' });
  expect(count.held).toBe(2);
});
