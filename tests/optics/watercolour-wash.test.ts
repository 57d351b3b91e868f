import { expect, test } from 'vitest';
import { BANDS, bandNm, type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { PER_MM } from '../../src/optics/opaque.ts';
import { removeSurface, type Surface } from '../../src/optics/surface.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import {
  crossValidationFolds,
  deltaEab,
  fitCrossValidated,
  type MeasuredWashMixture,
  predictWashes,
} from '../../src/optics/wash-validation.ts';
import { fitWashes, predictWash, type Wash } from '../../src/optics/watercolour-wash.ts';
import { flat, flatPaint } from './flat.ts';

const surface: Surface = { k1: 0.02, k2: 0.6, specular: 'included' };
const paper = flat(0.85);
const ground = removeSurface(paper, surface).R;
const at = (of: (nm: number) => number) =>
  Float64Array.from({ length: BANDS }, (_, b) => of(bandNm(b)));
const edge = (nm: number, place: number) => 1 / (1 + Math.exp((place - nm) / 15));
const paints = [
  [at((nm) => 0.02 + 3 * (1 - edge(nm, 520))), at(() => 0.4)],
  [at((nm) => 0.1 + 2 * edge(nm, 560)), at(() => 0.2)],
  [at(() => 0.01), at(() => 0.9)],
].map(([K, S]) => ({ K: spectrum<'K'>(K), S: spectrum<'S'>(S) }));

/** Washes by the model itself, with an exponent of 0.85, and a fourth paint that is paper fibre. */
function painted(amounts: number[]): Reflectance {
  const parts = amounts.map((amount) => (amount === 0 ? 0 : (amount / 0.04) ** 0.85));
  const film = { filmMm: (parts.reduce((sum, v) => sum + v, 0) + 0.38) / PER_MM, ground };
  return predictReflectance(
    { parts: [...parts, 0.38], film },
    [...paints, flatPaint(0, 1)],
    surface,
  );
}
const wash = (...amounts: number[]): Wash => ({ amounts, R: painted(amounts) });
const singles = [0.01, 0.03, 0.06, 0.12].flatMap((a) => [
  wash(a, 0, 0),
  wash(0, a, 0),
  wash(0, 0, a),
]);
const mixed = (pair: string, ...amounts: number[]): MeasuredWashMixture => ({
  ...wash(...amounts),
  pair,
});
const off = (amounts: number[], washes: ReturnType<typeof fitWashes>) => {
  const [found] = predictWashes([mixed('any', ...amounts)], washes);
  return deltaEab(found!);
};

test('washes and mixtures of the model itself are foreseen', () => {
  const washes = fitWashes(3, paper, [...singles, wash(0.02, 0.02, 0), wash(0, 0.04, 0.02)]);
  expect(washes.surface.k2).toBeCloseTo(0.6, 1);
  expect(off([0.04, 0.02, 0], washes)).toBeLessThan(2);
  expect(off([0.02, 0.02, 0.04], washes)).toBeLessThan(4);
  expect(predictWash([0.02, 0, 0], washes)).toHaveLength(BANDS);
  expect(washes.exponents).toHaveLength(3);
  for (const exponent of washes.exponents) expect(Math.abs(exponent - 0.85)).toBeLessThan(0.15);
});

test('the same twice, and the same from an earlier fit', () => {
  const first = fitWashes(3, paper, singles);
  expect(fitWashes(3, paper, singles).paints).toEqual(first.paints);
  const again = fitWashes(3, paper, singles, undefined, first);
  expect(off([0.02, 0.02, 0], again)).toBeCloseTo(off([0.02, 0.02, 0], first), 1);
});

test('folds hold whole pairs, each once, as the seed has it', () => {
  const mixtures = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].flatMap((pair) => [
    mixed(pair, 0.02, 0.02, 0),
    mixed(pair, 0.04, 0.02, 0),
  ]);
  const folds = crossValidationFolds(mixtures, 3, 5);
  expect(folds.flat()).toHaveLength(14);
  const pairs = folds.map((fold) => new Set(fold.map(({ pair }) => pair)));
  expect(pairs.map(({ size }) => size)).toEqual([3, 2, 2]);
  expect(new Set(pairs.flatMap((set) => [...set])).size).toBe(7);
  const named = (seed: number) =>
    crossValidationFolds(mixtures, 3, seed).map((f) => f.map(({ pair }) => pair));
  expect(named(5)).toEqual(named(5));
  expect(named(5)).not.toEqual(named(6));
});

test('with few pairs nothing is chosen, but all is fitted', () => {
  const data = { pigments: ['a', 'b', 'c'], paper, singles };
  const { washes, options } = fitCrossValidated(data, [mixed('a and b', 0.02, 0.02, 0)]);
  expect(options.singles).toBe(0.2);
  expect(off([0.02, 0.02, 0], washes)).toBeLessThan(1);
});
