import { expect, test } from 'vitest';
import { spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { D65, toXYZ } from '../../src/colour/observer.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface, type Surface } from '../../src/optics/surface.ts';
import { describeShared, readSharedJson } from '../shared.ts';

interface Mixture {
  readonly c: Readonly<Record<string, number>>;
  readonly R_internal: number[];
  readonly R_measured: number[];
  readonly XYZ_D65: number[];
  readonly Lab_D65: Lab;
}

// Five invented smooth pigments and 13 mixtures: opaque two-constant theory, the surface of J. L.
// Saunderson (1942) with 0.04 and 0.6, and E308 weights, computed twice by independent programs.
describeShared('invented pigments through the whole chain', () => {
  const { pigments, mixtures }: { pigments: Pigments; mixtures: Mixture[] } = readSharedJson(
    'reference/colour-checks.json',
  ).kubelka_munk.synthetic_pigments;
  type Pigments = Readonly<Record<string, { K: number[]; S: number[] }>>;
  const surface: Surface = { k1: 0.04, k2: 0.6, specular: 'included' };

  test('there are 13', () => expect(mixtures).toHaveLength(13));
  test.each(mixtures.map((m) => [Object.entries(m.c).join(' '), m] as const))(
    '%s',
    (_, mixture) => {
      const paints = Object.keys(mixture.c).map((name) => {
        const { K, S } = pigments[name]!;
        return { K: spectrum<'K'>(K), S: spectrum<'S'>(S) };
      });
      const R = opaque(Object.values(mixture.c), paints, spectrum<'R'>());
      // K and S are printed to six decimals, so R holds to a few of the last.
      R.forEach((r, band) => {
        expect(Math.abs(r - mixture.R_internal[band]!)).toBeLessThan(3e-6);
      });
      addSurface(R, surface);
      R.forEach((r, band) => {
        expect(Math.abs(r - mixture.R_measured[band]!)).toBeLessThan(3e-6);
      });
      toXYZ(R, D65, new Float64Array(3)).forEach((v, i) => {
        expect(Math.abs(v - mixture.XYZ_D65[i]!)).toBeLessThan(3e-4);
      });
      labOf(R).forEach((v, i) => {
        expect(Math.abs(v - mixture.Lab_D65[i]!)).toBeLessThan(3e-4);
      });
    },
  );
});
