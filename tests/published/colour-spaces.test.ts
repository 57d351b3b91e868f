import { converter, parse, toGamut } from 'culori';
import { describe, expect, test } from 'vitest';
import { adaptationMatrix } from '../../src/colour/adaptation.ts';
import { gamutMappedRgb, hexOf, labOfHex } from '../../src/colour/gamut-mapping.ts';
import { labOfXYZ, lOfY, yOfL } from '../../src/colour/lab.ts';
import { type Matrix, multiplyColumn } from '../../src/colour/matrix.ts';
import type { XYZ } from '../../src/colour/observer.ts';
import { oklabOfLab, oklabOfLinear } from '../../src/colour/oklab.ts';
import {
  DECODE_8BIT,
  FROM_XYZ,
  labOfLinear,
  RGB_WHITE,
  TO_XYZ,
  xyzOfLinear,
} from '../../src/colour/rgb.ts';
import { expectMatrix, expectNear } from '../colour/near.ts';
import { describeShared, readSharedJson } from '../shared.ts';

type Triple = [number, number, number];
interface Colour {
  readonly name: string;
  readonly hex: string;
  readonly linear: Triple;
  readonly XYZ_D65: Triple;
  readonly XYZ_D50_bradford: Triple;
  readonly Lab_D65: Triple;
  readonly Lab_D50: Triple;
  readonly OKLab: Triple;
}

/** Ours are on the scale Y = 100, the printed matrices on Y = 1. */
const scaled = (m: Matrix, by: number) => m.map((row) => row.map((v) => v * by));

describeShared('sRGB', () => {
  const checks = readSharedJson('reference/colour-checks.json');
  const colours: Colour[] = checks.srgb.colours;
  const linearOf = (hex: string) =>
    [1, 3, 5].map((at) => DECODE_8BIT[Number.parseInt(hex.slice(at, at + 2), 16)]!) as Triple;

  // IEC 61966-2-1:1999 with amendment 1; the exact matrix and its inverse to ten decimals.
  test('matrices', () => {
    expectMatrix(scaled(TO_XYZ.srgb, 0.01), checks.srgb.M_exact, 1e-10);
    expectMatrix(scaled(FROM_XYZ.srgb, 100), checks.srgb.M_inverse_exact, 1e-10);
    expectMatrix(scaled(TO_XYZ.srgb, 0.01), checks.srgb.M_IEC_4dp, 5e-5);
  });

  test('decoding of 8 bits', () => {
    for (const [v, linear] of Object.entries(checks.srgb.decode_8bit as Record<string, number>))
      expect(DECODE_8BIT[Number(v)]).toBeCloseTo(linear, 9);
  });

  // Eighteen colours on which two other libraries agree to 5e-7.
  test.each(colours)('$name: linear, XYZ, CIELAB and OKLab', (colour) => {
    const linear = linearOf(colour.hex);
    expectNear(linear, colour.linear, 1e-6);
    const xyz = xyzOfLinear(...linear);
    expectNear(
      xyz.map((v) => v / 100),
      colour.XYZ_D65,
      1e-6,
    );
    expectNear(labOfHex(colour.hex), colour.Lab_D65, 1e-6);
    expectNear(oklabOfLinear(...linear, new Float64Array(3)), colour.OKLab, 1e-6);
    expectNear(oklabOfLab(labOfHex(colour.hex)), colour.OKLab, 1e-6);
    expect(hexOf(labOfHex(colour.hex))).toBe(colour.hex);
  });

  test.each(colours)('$name: under D50 by Bradford', (colour) => {
    const white: XYZ = [(100 * 0.3457) / 0.3585, 100, (100 * (1 - 0.3457 - 0.3585)) / 0.3585];
    const xyz = multiplyColumn(
      adaptationMatrix(RGB_WHITE, white),
      ...xyzOfLinear(...linearOf(colour.hex)),
    );
    expectNear(
      xyz.map((v) => v / 100),
      colour.XYZ_D50_bradford,
      1e-6,
    );
    expectNear(labOfXYZ(...xyz, white), colour.Lab_D50, 1e-6);
  });
});

// SMPTE RP 431-2 primaries, D65; the matrix that CSS Color 4 prints.
describe('Display P3', () => {
  test('matrix', () => {
    expectMatrix(
      scaled(TO_XYZ['display-p3'], 0.01),
      [
        [608311 / 1250200, 189793 / 714400, 198249 / 1000160],
        [35783 / 156275, 247089 / 357200, 198249 / 2500400],
        [0, 32229 / 714400, 5220557 / 5000800],
      ],
      1e-12,
    );
  });

  test('CIELAB of P3 colours equals culori', () => {
    const theirs = converter('lab65');
    for (const [r, g, b] of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0.2, 0.5, 0.7],
    ] as Triple[]) {
      const encoded = (v: number) => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
      const lab = theirs({ mode: 'p3', r: encoded(r), g: encoded(g), b: encoded(b) });
      expectNear(labOfLinear(r, g, b, 'display-p3'), [lab.l, lab.a, lab.b], 1e-4);
    }
  });
});

// B. Ottosson, A perceptual color space for image processing, 2020: printed to three decimals for XYZ.
describeShared('OKLab', () => {
  const checks = readSharedJson('reference/colour-checks.json').oklab;
  const ofXYZ = (xyz: Triple) => {
    const linear = multiplyColumn(FROM_XYZ.srgb, ...(xyz.map((v) => 100 * v) as Triple));
    return oklabOfLinear(...linear, new Float64Array(3));
  };
  test('the published pairs', () => {
    for (const { XYZ, OKLab } of checks.published) expectNear(ofXYZ(XYZ), OKLab, 5e-4);
  });
  test('pairs of an open test suite', () => {
    // That suite goes through XYZ, whose white lands 1.2e-4 from (1, 0, 0); our one route is direct.
    for (const { XYZ, OKLab } of checks.open_suite) expectNear(ofXYZ(XYZ), OKLab, 1.5e-4);
  });
});

// CIE 015:2018, 8.2.1.
describeShared('CIELAB', () => {
  const checks = readSharedJson('reference/colour-checks.json').cielab;
  test('lightness of Y, both branches', () => {
    for (const { Y, L } of checks.L_from_Y) {
      expect(lOfY(Y)).toBeCloseTo(L, 7);
      expect(yOfL(L)).toBeCloseTo(Y, 6);
    }
  });
  test('colours of an open test suite', () => {
    for (const { XYZ01, Lab } of checks.open_suite)
      expectNear(labOfXYZ(...(XYZ01.map((v: number) => 100 * v) as Triple), RGB_WHITE), Lab, 1e-6);
  });
});

test('culori reads our hex as the same colour', () => {
  const lab = converter('lab65')(parse(hexOf([50, 20, 30])))!;
  expectNear([lab.l, lab.a, lab.b], [50, 20, 30], 0.4);
});

// CSS Color Module Level 4, section 13: chroma is lowered in OKLCh, and clipping stops that at a difference
// of 0.02. culori does it for us; lightness and hue are held here by our own OKLab of the same colours.
describe.each([
  ['srgb', 'rgb'],
  ['display-p3', 'p3'],
] as const)('what a screen of %s cannot show is brought in as culori does', (space, mode) => {
  const bring = toGamut(mode, 'oklch');
  const oklab = converter('oklab');
  const WIDE: [number, number, number][] = [
    [60, 100, 80],
    [85, -5, 120],
    [50, -90, 60],
    [35, 40, -110],
    [75, -60, -30],
    [55, 90, -60],
  ];
  test.each(WIDE)('CIELAB %d, %d, %d', (L, a, b) => {
    const theirs = oklab(bring({ mode: 'lab65', l: L, a, b }))!;
    const [r, g, blue] = gamutMappedRgb([L, a, b], space);
    const ours = oklab({ mode, r, g, b: blue })!;
    expect(Math.hypot(ours.l - theirs.l, ours.a - theirs.a, ours.b - theirs.b)).toBeLessThan(0.025);
    // Cut off channel by channel it would be another hue or value.
    const meant = oklab({ mode: 'lab65', l: L, a, b })!;
    expect(Math.abs(ours.l - meant.l)).toBeLessThan(0.02);
    const turn = Math.atan2(ours.b, ours.a) - Math.atan2(meant.b, meant.a);
    expect(Math.hypot(ours.a, ours.b) * Math.abs(Math.sin(turn))).toBeLessThan(0.02);
  });
});
