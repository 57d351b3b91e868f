import { expect, test } from 'vitest';
import { nameOf } from '../../src/colour/colour-name.ts';
import { labOfHex } from '../../src/colour/gamut-mapping.ts';
import { namedHueOf } from '../../src/colour/hue-family.ts';
import { expectMatrix } from '../colour/near.ts';
import { describeShared, readSharedJson } from '../shared.ts';
import { type Notation, parseNotation, readMunsell } from './munsell.ts';

// The look-up that the checks of the names rest on is itself checked here.
describeShared('the Munsell look-up', () => {
  const checks = readSharedJson('reference/colour-checks.json').munsell;
  const munsell = readMunsell();
  const hueOff = (x: number, y: number) => Math.abs(((x - y + 150) % 100) - 50);

  const expectNotation = (got: Notation, printed: string, hue = 0.1, chroma = 0.1) => {
    const { H, V, C } = parseNotation(printed);
    expect(Math.abs(got.V - V)).toBeLessThanOrEqual(0.011);
    // Written N: the row has chroma 0.06, which is a grey and has no hue.
    expect(Math.abs(got.C - C)).toBeLessThanOrEqual(C === 0 ? 0.0999 : chroma);
    // Hue means little near the neutral axis.
    if (C > 0) expect(hueOff(got.H, H)).toBeLessThanOrEqual(C < 2 ? 0.5 : hue);
    return C > 0;
  };

  test('Bradford from D65 to C', () => {
    expectMatrix(munsell.toC, checks.bradford_D65_to_C, 1e-7);
  });

  // P. Centore, An open-source inversion algorithm for the Munsell renotation, 2011. Plain bilinear
  // interpolation is off from his by up to 0.11 in hue; the reference's own column by rounding only.
  test('27 published inversions', () => {
    expect(checks.inversion).toHaveLength(27);
    const count = { hued: 0, published: 0 };
    for (const { xyY_C, published_centore_2011, own_bilinear } of checks.inversion) {
      const [x, y, Y] = xyY_C;
      const got = munsell.notationOf([x, y], Y);
      count.hued += Number(expectNotation(got, own_bilinear, 0.02, 0.02));
      // One colour above value 9, which stands there twice, is ambiguous in every program: its chroma
      // runs from 5.6 to 6.6.
      if (got.V < 9) {
        expectNotation(got, published_centore_2011, 0.12, 0.1);
        count.published++;
      }
    }
    expect(count).toEqual({ hued: 26, published: 25 });
  });

  // C. S. McCamy, H. Marcus, J. G. Davidson, J. Appl. Photogr. Eng. 2 (1976) 95-99; names from memory.
  test('the chart of 1976: notations, ISCC-NBS names and our words', () => {
    expect(checks.chart24_1976).toHaveLength(24);
    let names = 0;
    for (const {
      xyY_C_1976,
      munsell_from_xyY,
      munsell_published,
      ...patch
    } of checks.chart24_1976) {
      const [x, y, Y] = xyY_C_1976;
      // Y of 1976 is relative to magnesium oxide.
      const got = munsell.notationOf([x, y], (100 * Y) / checks.MgO_factor);
      const { V } = parseNotation(munsell_from_xyY);
      expect(Math.abs(got.V - V)).toBeLessThan(0.011);
      const block = munsell.nameOfNotation(parseNotation(munsell_published));
      expect(block.level3).toBe(patch.iscc_nbs_from_published_munsell);
      if (block.level3 === patch.iscc_nbs_published_memory) names++;
      const lab = munsell.labOfNotation(parseNotation(munsell_published))!;
      console.info(`${patch.name}: ${block.level3} | ${nameOf(lab)}`);
    }
    expect(names).toBeGreaterThanOrEqual(23);
  });

  test('sixteen sRGB colours', () => {
    expect(checks.srgb_examples).toHaveLength(16);
    let hued = 0;
    for (const { hex, HVC, iscc_number, iscc_name } of checks.srgb_examples) {
      const lab = labOfHex(hex);
      const got = munsell.notationOfLab(lab);
      expect(Math.abs(got.V - HVC[1])).toBeLessThan(0.002);
      expect(Math.abs(got.C - HVC[2])).toBeLessThan(0.04);
      if (HVC[2] > 0.5) {
        expect(hueOff(got.H, HVC[0])).toBeLessThan(0.06);
        hued++;
      }
      expect(munsell.nameOfNotation(got).number).toBe(iscc_number);
      console.info(`${hex}: ${iscc_name} | ${nameOf(lab)} (${namedHueOf(lab).family})`);
    }
    expect(hued).toBe(15);
  });
});
