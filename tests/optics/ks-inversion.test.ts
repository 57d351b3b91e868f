import fc from 'fast-check';
import { expect, test } from 'vitest';
import { overGround } from '../../src/optics/film.ts';
import { fromBlackAndWhite, fromTint } from '../../src/optics/ks-inversion.ts';
import { evenly } from '../evenly.ts';

const seen = (K: number, S: number, X: number, Rg: number) => ({ R: overGround(K, S, X, Rg), Rg });

test('K and S come back from any two grounds, from clear to almost hiding', () => {
  const coefficient = evenly(0.01, 4);
  const thickness = evenly(0.1, 1.5);
  fc.assert(
    fc.property(coefficient, coefficient, thickness, (K, S, X) => {
      const found = fromBlackAndWhite(seen(K, S, X, 0.05), seen(K, S, X, 0.85), X);
      if (!found.ok) throw new Error(found.fault.code);
      expect(found.value.S / S).toBeCloseTo(1, 3);
      expect(found.value.K / K).toBeCloseTo(1, 3);
    }),
    { seed: 1 },
  );
});

test('the limits: nothing absorbs, nothing scatters, a film that hides', () => {
  const white = fromBlackAndWhite(seen(0, 2, 0.5, 0), seen(0, 2, 0.5, 0.8), 0.5);
  expect(white.ok && white.value.S).toBeCloseTo(2, 9);
  expect(white.ok && white.value.K).toBeCloseTo(0, 9);
  const dye = fromBlackAndWhite(seen(1, 0, 0.5, 0.02), seen(1, 0, 0.5, 0.8), 0.5);
  expect(dye.ok && dye.value.S).toBe(0);
  expect(dye.ok && dye.value.K).toBeCloseTo(1, 9);
  const thick = fromBlackAndWhite({ R: 0.5, Rg: 0 }, { R: 0.5, Rg: 0.8 }, 1);
  expect(thick).toEqual({ ok: false, fault: { code: 'hides', ratio: 0.25 } });
  const odd = fromBlackAndWhite({ R: 0.5, Rg: 0 }, { R: 0.4, Rg: 0.8 }, 1);
  expect(odd).toEqual({ ok: false, fault: { code: 'impossible' } });
  expect(() => fromBlackAndWhite({ R: 0.5, Rg: 0.8 }, { R: 0.6, Rg: 0 }, 1)).toThrow(RangeError);
  expect(() => fromBlackAndWhite({ R: Number.NaN, Rg: 0 }, { R: 0.6, Rg: 0.8 }, 1)).toThrow(
    RangeError,
  );
});

test('masstone and tint give back the pigment', () => {
  const white = { K: 0.004, S: 1 };
  const pigment = { K: 2.3, S: 0.17 };
  const share = 0.2;
  const tint =
    (share * pigment.K + (1 - share) * white.K) / (share * pigment.S + (1 - share) * white.S);
  const found = fromTint(pigment.K / pigment.S, tint, white, share);
  expect(found.ok && found.value.S).toBeCloseTo(pigment.S, 14);
  expect(found.ok && found.value.K).toBeCloseTo(pigment.K, 13);
  // A tint darker than its masstone is no tint.
  expect(fromTint(1, 2, white, share)).toEqual({ ok: false, fault: { code: 'impossible' } });
});
