import { expect, test } from 'vitest';
import { BANDS, type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf, labOfXYZ } from '../../src/colour/lab.ts';
import type { XYZ } from '../../src/colour/observer.ts';
import { opaque, type Paint } from '../../src/optics/opaque.ts';
import { addSurface, NO_SURFACE, type Surface } from '../../src/optics/surface.ts';
import { describeShared, readShared, readSharedJson } from '../shared.ts';

const rows = (file: string): string[][] =>
  readShared(`reference/${file}`)
    .split(/\r?\n/)
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));

/** Plain weights sampled at 10 nm, the bands outside 380-730 nm folded into the end bands. */
function plainWeights(): Float64Array[] {
  const folded = [0, 1, 2].map(() => new Float64Array(BANDS));
  for (const row of rows('cie1931-d65-10nm.csv').slice(1)) {
    const band = Math.min(Math.max((Number(row[0]) - 380) / 10, 0), BANDS - 1);
    folded.forEach((weights, i) => {
      weights[band]! += Number(row[5 + i]);
    });
  }
  return folded;
}

/** K and S by name; a grid that starts at 400 nm is carried on flat to 380. */
function paintsOf(file: string): Map<string, Paint> {
  const [header, ...lines] = rows(file);
  const bands = header!.slice(3).map(Number);
  const paints = new Map<string, { K?: Paint['K']; S?: Paint['S'] }>();
  for (const [, name, which, ...values] of lines) {
    const missing = (bands[0]! - 380) / 10;
    const full = [...Array(missing).fill(values[0]), ...values].map(Number);
    const entry = paints.get(name!) ?? {};
    paints.set(name!, { ...entry, [which as 'K' | 'S']: spectrum(full) });
  }
  return paints as Map<string, Paint>;
}

interface Recipe {
  readonly id: string;
  readonly set: 'rit2005' | 'delft';
  readonly parts: Readonly<Record<string, number>>;
  readonly lab: Lab;
  readonly lab_saunderson: Lab;
}

// 40 recipes computed twice by independent programs from the K and S of Y. Okumura (Rochester, 2005)
// and R. Wiersma (TU Delft, 2025), and two worked examples beside them.
describeShared('colours of published mixtures', () => {
  const weights = plainWeights();
  const white = weights.map((w) => w.reduce((a, b) => a + b, 0)) as unknown as XYZ;
  const plainLab = (R: Reflectance): Lab => {
    const [X, Y, Z] = weights.map((w) => R.reduce((sum, r, band) => sum + r * w[band]!, 0));
    return labOfXYZ(X!, Y!, Z!, white);
  };
  const sets = {
    rit2005: paintsOf('artist-ks-rit2005.csv'),
    delft: paintsOf('oil-ks-delft.csv'),
  };
  const surface: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
  const apart = (x: Lab, y: Lab) => Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);

  function reflectance(set: keyof typeof sets, parts: Recipe['parts'], seen: Surface): Reflectance {
    const paints = Object.keys(parts).map((name) => sets[set].get(name)!);
    return addSurface(opaque(Object.values(parts), paints, spectrum<'R'>()), seen);
  }

  const { recipes }: { recipes: Recipe[] } = readSharedJson('reference/mixtures-check.json');
  test('there are 30 and 10', () => {
    expect(recipes.filter((r) => r.set === 'rit2005')).toHaveLength(30);
    expect(recipes.filter((r) => r.set === 'delft')).toHaveLength(10);
  });

  test.each(recipes)('$id', (recipe) => {
    const bare = reflectance(recipe.set, recipe.parts, NO_SURFACE);
    const seen = reflectance(recipe.set, recipe.parts, surface);
    expect(apart(plainLab(bare), recipe.lab)).toBeLessThan(0.02);
    expect(apart(plainLab(seen), recipe.lab_saunderson)).toBeLessThan(0.02);
    // With the product's own table (E308 practice), by the set's own surface constants.
    const own = recipe.set === 'delft' ? bare : seen;
    const printed = recipe.set === 'delft' ? recipe.lab : recipe.lab_saunderson;
    expect(apart(labOf(own), printed)).toBeLessThan(0.2);
  });

  test.each([
    ['rit2005', { 'Yellow ochre': 1, 'Titanium white': 4 }, NO_SURFACE, [92.62, 1.65, 16.93]],
    ['rit2005', { 'Yellow ochre': 1, 'Titanium white': 4 }, surface, [84.02, 5.33, 27.3]],
    ['delft', { 'Bone black': 1, 'Titanium white': 4 }, NO_SURFACE, [64.3, -0.1, -5.39]],
  ] as const)('worked example of %s', (set, parts, seen, printed) => {
    const R = reflectance(set, parts, seen);
    expect(apart(plainLab(R), printed)).toBeLessThan(0.02);
    expect(apart(labOf(R), printed)).toBeLessThan(0.2);
  });
});
