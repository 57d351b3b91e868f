import { describe, expect, test } from 'vitest';
import { labOfHex } from '../../src/colour/gamut-mapping.ts';
import { hueDeg, labOfXYZ, xyzOfLab } from '../../src/colour/lab.ts';
import { linearOfOklab, oklabOfLinear } from '../../src/colour/oklab.ts';
import { labOfLinear, linearOfLab, RGB_WHITE } from '../../src/colour/rgb.ts';
import { expectNear } from './near.ts';
import { seeded } from './random.ts';

type Triple = [number, number, number];

describe('there and back', () => {
  test('linear RGB, CIELAB and OKLab to 1e-12', () => {
    const random = seeded(11);
    const out = new Float64Array(3);
    for (let i = 0; i < 2000; i++) {
      const rgb: Triple = [random(), random(), random()];
      for (const space of ['srgb', 'display-p3'] as const)
        expectNear(linearOfLab(labOfLinear(...rgb, space), space), rgb, 1e-12);
      const [L, a, b] = oklabOfLinear(...rgb, new Float64Array(3)) as unknown as Triple;
      expectNear(linearOfOklab(L, a, b, out), rgb, 1e-12);
    }
  });

  test('there and back, dark colours too', () => {
    const random = seeded(3);
    for (let i = 0; i < 1000; i++) {
      const lab: Triple = [random() * (i % 2 ? 100 : 9), random() * 40 - 20, random() * 40 - 20];
      expectNear(labOfXYZ(...xyzOfLab(lab, RGB_WHITE), RGB_WHITE), lab, 1e-9);
    }
  });
  test('a neutral has no hue', () => {
    for (const grey of ['#000000', '#777777', '#808080', '#ffffff'])
      expect(hueDeg(labOfHex(grey))).toBeNull();
  });
});
