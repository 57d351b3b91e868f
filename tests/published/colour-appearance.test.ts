import { expect, test } from 'vitest';
import {
  activePassive,
  clarity,
  depth,
  heavyLight,
  vividness,
  warmCool,
} from '../../src/colour/appearance.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { labOfHex } from '../../src/colour/gamut-mapping.ts';
import { chroma, hueDeg, type Lab, labOfLCh } from '../../src/colour/lab.ts';
import { meanPairHarmony, pairHarmony } from '../../src/colour/pair-harmony.ts';
import { describeShared, readSharedJson } from '../shared.ts';

// L.-C. Ou, M. R. Luo, A. Woodcock, A. Wright, Color Res. Appl. 29 (2004) 232-240; V, D, T of
// R. S. Berns, Color Res. Appl. 39 (2014) 322-330, from memory. Values computed by two programs.
describeShared('appearance scales', () => {
  const checks = readSharedJson('reference/colour-checks.json');

  test('the table', () => {
    expect(checks.appearance_scales.checks.length).toBeGreaterThanOrEqual(8);
    for (const row of checks.appearance_scales.checks) {
      const lab: Lab = row.Lab;
      expect(warmCool(lab)).toBeCloseTo(row.warm_cool, 5);
      expect(heavyLight(lab)).toBeCloseTo(row.heavy_light, 5);
      expect(activePassive(lab)).toBeCloseTo(row.active_passive, 5);
      expect(vividness(lab)).toBeCloseTo(row.V_ab, 5);
      expect(depth(lab)).toBeCloseTo(row.D_ab, 5);
      expect(clarity(lab, [70, 0, 0])).toBeCloseTo(row.T_ab_on_grey_70, 5);
    }
  });

  test('warmth of the sRGB primaries', () => {
    const printed = checks.appearance_scales.sRGB_primaries_warm_cool_D65;
    const hex = { red: '#ff0000', green: '#00ff00', blue: '#0000ff', white: '#ffffff' };
    for (const [name, code] of Object.entries(hex))
      expect(warmCool(labOfHex(code))).toBeCloseTo(printed[name], 4);
  });

  test('signs of the variants', () => {
    const { cases } = checks.variant_sign_tests;
    expect(cases).toHaveLength(4);
    for (const { hex, LCh_D65, base, variants } of cases) {
      const lab = labOfHex(hex);
      expect([lab[0], chroma(lab), hueDeg(lab)].map((v) => Number(v!.toFixed(4)))).toEqual(LCh_D65);
      expect(warmCool(lab)).toBeCloseTo(base.WC, 3);
      for (const variant of Object.values<
        Record<string, number> & { LCh: [number, number, number] }
      >(variants)) {
        const varied = labOfLCh(...variant.LCh);
        expect(warmCool(varied)).toBeCloseTo(variant.WC!, 3);
        expect(heavyLight(varied)).toBeCloseTo(variant.HL!, 3);
        expect(vividness(varied)).toBeCloseTo(variant.V!, 3);
        expect(depth(varied)).toBeCloseTo(variant.D!, 3);
        expect(deltaE00(lab, varied)).toBeCloseTo(variant.dE00_from_base!, 2);
      }
    }
  });
});

// L.-C. Ou, M. R. Luo, Color Res. Appl. 31 (2006) 191-204. The pairs are computed: none are printed.
describeShared('two-colour harmony', () => {
  const checks = readSharedJson('reference/colour-checks.json').harmony_ou_luo_2006;

  test('pairs and their parts', () => {
    expect(checks.pairs).toHaveLength(8);
    for (const row of checks.pairs) {
      const pair = pairHarmony(row.lab1, row.lab2);
      expect(pair.score).toBeCloseTo(row.CH, 5);
      expect(pair.likeness).toBeCloseTo(row.HC, 5);
      expect(pair.lightness).toBeCloseTo(row.HLsum, 5);
      expect(pair.contrast).toBeCloseTo(row.HdL, 5);
      expect(pair.hues[0]).toBeCloseTo(row.HSY1, 5);
      expect(pair.hues[1]).toBeCloseTo(row.HSY2, 5);
      expect(pairHarmony(row.lab2, row.lab1).score).toBeCloseTo(pair.score, 12);
    }
  });

  test('a theme is the mean of its pairs', () => {
    expect(meanPairHarmony(checks.theme.labs)).toBeCloseTo(checks.theme.mean, 5);
    expect(meanPairHarmony([[50, 0, 0]])).toBeNull();
  });

  test('stays in the computed range on a grid of sRGB', () => {
    const [low, high] = checks.computed_range_over_sRGB_grid_9x9x9;
    const steps = ['00', '40', '80', 'bf', 'ff'];
    const labs = steps.flatMap((r) =>
      steps.flatMap((g) => steps.map((b) => labOfHex(`#${r}${g}${b}`))),
    );
    for (const x of labs)
      for (const y of labs) {
        const { score } = pairHarmony(x, y);
        expect(score >= low - 0.001 && score <= high + 0.001).toBe(true);
      }
  });
});

// The constant of that formula: without chroma warm-cool is -0.5.
test('every neutral scores the same warmth', () => {
  for (const L of [0, 30, 100]) expect(warmCool([L, 0, 0])).toBe(-0.5);
});
