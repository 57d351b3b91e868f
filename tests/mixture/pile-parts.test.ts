import { describe, expect, test } from 'vitest';
import type { Mixture } from '../../src/mixture/mixture-types.ts';
import { mixtureVolumesOf, volumesOf } from '../../src/mixture/pile-parts.ts';

const PLAIN: Mixture = {
  recipe: [{ pigment: 'lead_white', share: 1 }],
  lab: [80, 0, 0],
  deltaE00: 0,
  reachable: true,
  parts: [
    { pigment: 'raw_umber', parts: 1 },
    { pigment: 'lead_white', parts: 31 },
  ],
  partsLab: [80, 0, 0],
  partsDeltaE00: 2,
};
const LET_DOWN: Mixture = {
  ...PLAIN,
  letDown: {
    letDowns: [{ pigment: 'bone_black', white: 'lead_white', parts: 1, whiteParts: 10 }],
    parts: [
      { pigment: 'lead_white', parts: 12, letDown: false },
      { pigment: 'bone_black', parts: 1, letDown: true },
    ],
    lab: [80, 0, 0],
    deltaE00: 1,
  },
};

describe('what is in a pile', () => {
  test('whole parts as they stand', () => {
    expect(mixtureVolumesOf(PLAIN)).toEqual(PLAIN.parts);
  });

  test('a let-down counts as what it was made of', () => {
    const [white, black] = mixtureVolumesOf(LET_DOWN);
    expect(white).toMatchObject({ pigment: 'lead_white' });
    expect(white!.parts).toBeCloseTo(12 + 10 / 11, 12);
    expect(black).toMatchObject({ pigment: 'bone_black' });
    expect(black!.parts).toBeCloseTo(1 / 11, 12);
  });

  test('the same pigment twice counts once, most of it first', () => {
    const parts = [
      { pigment: 'a', parts: 1 },
      { pigment: 'b', parts: 2 },
      { pigment: 'a', parts: 2 },
    ];
    expect(volumesOf(parts)).toEqual([
      { pigment: 'a', parts: 3 },
      { pigment: 'b', parts: 2 },
    ]);
  });
});
