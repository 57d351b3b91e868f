import { expect, test } from 'vitest';
import { overBlack, overGround, transmittance } from '../../src/optics/film.ts';
import { fromBlackAndWhite } from '../../src/optics/ks-inversion.ts';
import { infiniteReflectance, ratioOf } from '../../src/optics/opaque.ts';
import { throughSurface, underSurface } from '../../src/optics/surface.ts';
import { describeShared, readSharedJson } from '../shared.ts';

interface Ratio {
  readonly R: number;
  readonly KS: number;
}
interface Finite {
  readonly K: number;
  readonly S: number;
  readonly X: number;
  readonly Rg: number;
  readonly R: number;
  readonly Rinf: number | null;
}
interface Seen {
  readonly k1: number;
  readonly k2: number;
  readonly R_internal: number;
  readonly R_measured_specular_included: number;
  readonly R_measured_specular_excluded: number;
}

// Formulas: P. Kubelka and F. Munk, Z. tech. Phys. 12 (1931) 593; P. Kubelka, J. Opt. Soc. Am. 38
// (1948) 448 and 44 (1954) 330. The numbers were also had by integrating dR/dx numerically.
describeShared('published two-flux tables', () => {
  const table = readSharedJson('reference/colour-checks.json').kubelka_munk;

  test.each<Ratio>(table.K_over_S)('K/S of R = $R is $KS', ({ R, KS }) => {
    expect(Math.abs(ratioOf(R) - KS)).toBeLessThan(6e-9 + 6e-9 * KS);
    // Back from the printed K/S, whose eighth decimal moves R by up to 1e-6 at 0.99.
    expect(infiniteReflectance(KS, 1)).toBeCloseTo(R, 5);
  });

  test.each<Ratio>(table.R_from_KS)('R of K/S = $KS is $R', ({ R, KS }) => {
    expect(Math.abs(infiniteReflectance(KS, 1) - R)).toBeLessThan(6e-11);
  });

  test.each<Finite>(table.finite_layer)('K $K, S $S, X $X over $Rg', ({ K, S, X, Rg, R, Rinf }) => {
    expect(Math.abs(overGround(K, S, X, Rg) - R)).toBeLessThan(6e-9);
    if (Rinf !== null) expect(Math.abs(infiniteReflectance(K, S) - Rinf)).toBeLessThan(6e-9);
  });

  test('reflectance over black and transmittance of a layer', () => {
    const { K, S, X, R0, T } = table.layer_R0_T;
    expect(Math.abs(overBlack(K, S, X) - R0)).toBeLessThan(6e-11);
    expect(Math.abs(transmittance(K, S, X) - T)).toBeLessThan(6e-11);
    for (const Rg of [0, 0.3, 1])
      expect(overGround(K, S, X, Rg)).toBeCloseTo(R0 + (T * T * Rg) / (1 - R0 * Rg), 9);
  });

  test('two layers one on the other are one of both thicknesses', () => {
    const { K, S, X1, X2, equals_X } = table.stacking;
    const [R1, T1] = [overBlack(K, S, X1), transmittance(K, S, X1)];
    const [R2, T2] = [overBlack(K, S, X2), transmittance(K, S, X2)];
    expect(R1 + (T1 * T1 * R2) / (1 - R1 * R2)).toBeCloseTo(overBlack(K, S, equals_X), 13);
    expect((T1 * T2) / (1 - R1 * R2)).toBeCloseTo(transmittance(K, S, equals_X), 13);
  });

  test('K and S of a drawdown over black and white', () => {
    const { R0, R, Rg, X, K, S, contrast_ratio } = table.black_white_inversion;
    const found = fromBlackAndWhite({ R: R0, Rg: 0 }, { R, Rg }, X);
    if (!found.ok) throw new Error(found.fault.code);
    expect(found.value.K).toBeCloseTo(K, 8);
    expect(found.value.S).toBeCloseTo(S, 8);
    expect(overBlack(K, S, X) / overGround(K, S, X, Rg)).toBeCloseTo(contrast_ratio, 8);
  });

  // J. L. Saunderson, J. Opt. Soc. Am. 32 (1942) 727.
  test.each<Seen>(table.saunderson)('surface $k1, $k2 over R = $R_internal', (row) => {
    const included = { k1: row.k1, k2: row.k2, specular: 'included' } as const;
    const excluded = { ...included, specular: 'excluded' } as const;
    const seen = throughSurface(row.R_internal, included);
    const glareless = throughSurface(row.R_internal, excluded);
    expect(Math.abs(seen - row.R_measured_specular_included)).toBeLessThan(6e-9);
    expect(Math.abs(glareless - row.R_measured_specular_excluded)).toBeLessThan(6e-9);
    expect(underSurface(seen, included)).toBeCloseTo(row.R_internal, 12);
    expect(underSurface(glareless, excluded)).toBeCloseTo(row.R_internal, 12);
  });
});
