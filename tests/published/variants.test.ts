import { describe, expect, test } from 'vitest';
import { depth, heavyLight, vividness, warmCool } from '../../src/colour/appearance.ts';
import { labOfHex } from '../../src/colour/gamut-mapping.ts';
import { chroma, hueDeg, type Lab, labOfLCh } from '../../src/colour/lab.ts';
import { pairHarmony } from '../../src/colour/pair-harmony.ts';
import { relationsOf } from '../../src/harmony/roles-and-intervals.ts';
import { AMOUNTS, type VariantWay, variantTarget } from '../../src/harmony/variant-target.ts';
import { describeShared, readSharedJson } from '../shared.ts';

interface Told {
  readonly LCh: readonly [number, number, number];
  readonly WC: number;
  readonly HL: number;
  readonly V: number;
  readonly D: number;
}
interface Case {
  readonly name: string;
  readonly hex: string;
  readonly LCh_D65: readonly [number, number, number];
  readonly base: Omit<Told, 'LCh'>;
  readonly variants: Readonly<Record<string, Told>>;
  readonly already_at_warm_pole: boolean;
}

/** Our way for each of the table's variants. */
const TABLE: Record<string, VariantWay> = {
  warmer_15: 'warmer',
  cooler_15: 'cooler',
  duller: 'duller',
  brighter: 'brighter',
  lighter: 'lighter',
  darker: 'deeper',
};

// Warm-cool and heavy-light: L.-C. Ou, M. R. Luo, A. Woodcock, A. Wright, Color Res. Appl. 29 (2004)
// 232-240; vividness and depth: R. S. Berns, Color Res. Appl. 39 (2014) 322-330 (formulas from memory).
// The four colours and their variants: the reference data's sign tests, computed from those formulas.
describeShared('variants against the published scales', () => {
  const { cases } = readSharedJson('reference/colour-checks.json').variant_sign_tests as {
    cases: Case[];
  };

  describe.each(cases)('$name', ({ hex, LCh_D65, base, variants, already_at_warm_pole }) => {
    const from = labOfHex(hex);
    const near = (lab: Lab, told: Omit<Told, 'LCh'>) => {
      expect(warmCool(lab)).toBeCloseTo(told.WC, 3);
      expect(heavyLight(lab)).toBeCloseTo(told.HL, 3);
      expect(vividness(lab)).toBeCloseTo(told.V, 2);
      expect(depth(lab)).toBeCloseTo(told.D, 2);
    };

    test('the scales give the table’s values', () => {
      expect([from[0], chroma(from), hueDeg(from)]).toEqual(
        LCh_D65.map((v) => expect.closeTo(v, 2)),
      );
      near(from, base);
      for (const told of Object.values(variants)) near(labOfLCh(...told.LCh), told);
    });

    test.each(Object.entries(TABLE))('%s has the signs of the table', (row, way) => {
      const told = variants[row]!;
      for (const by of AMOUNTS) {
        const { lab, stopped } = variantTarget(from, way, by);
        const signs = (
          [
            [warmCool(lab) - warmCool(from), told.WC - base.WC],
            [heavyLight(lab) - heavyLight(from), told.HL - base.HL],
            [vividness(lab) - vividness(from), told.V - base.V],
            [depth(lab) - depth(from), told.D - base.D],
          ] as const
        ).map(([ours, theirs]) => [sign(ours), sign(theirs)]);
        // Lighter and deeper hold OKLab's hue, not CIELAB's: their warmth may move a little.
        for (const [ours, theirs] of way === 'lighter' || way === 'deeper' ? signs.slice(1) : signs)
          expect(ours).toBe(theirs);
        if (way === 'warmer') expect(stopped === 'warm pole').toBe(already_at_warm_pole);
      }
    });
  });
});

const sign = (x: number): number => (Math.abs(x) < 1e-3 ? 0 : Math.sign(x));

// L.-C. Ou, M. R. Luo, Color Res. Appl. 31 (2006) 191-204: coefficients as transcribed four times
// independently; no printed pairs were found, so the reference data computed these.
describeShared('the two-colour score of a harmony’s pairs', () => {
  const { pairs, theme } = readSharedJson('reference/colour-checks.json').harmony_ou_luo_2006 as {
    pairs: { lab1: Lab; lab2: Lab; CH: number }[];
    theme: { labs: Lab[]; pair_CH: number[]; mean: number };
  };

  test('pair by pair', () => {
    for (const { lab1, lab2, CH } of pairs) {
      expect(pairHarmony(lab1, lab2).score).toBeCloseTo(CH, 5);
      const { pairs: told } = relationsOf([
        { name: 'one', lab: lab1, share: 0.5 },
        { name: 'other', lab: lab2, share: 0.5 },
      ]);
      expect(told.map(({ score }) => score.score)).toEqual([expect.closeTo(CH, 5)]);
    }
  });

  test('a theme’s mean', () => {
    const told = relationsOf(theme.labs.map((lab, i) => ({ name: `${i}`, lab, share: 1 / 3 })));
    expect(told.pairs.map(({ score }) => score.score).toSorted((a, b) => a - b)).toEqual(
      theme.pair_CH.toSorted((a, b) => a - b).map((v) => expect.closeTo(v, 5)),
    );
    expect(told.meanScore).toBeCloseTo(theme.mean, 5);
  });
});
