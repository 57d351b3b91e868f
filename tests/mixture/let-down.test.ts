import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { letDownParts } from '../../src/mixture/let-down.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { invented } from './invented.ts';

const tint = [
  { pigment: 'white', share: 0.985 },
  { pigment: 'blue', share: 0.012 },
  { pigment: 'red', share: 0.003 },
];
const target = predictColour(
  tint.map(({ pigment, share }) => ({ pigment, amount: share })),
  invented,
);

test('a light tint is measured by let-downs where no plain parts come near', () => {
  const found = findMixtures([target], invented, { alternatives: 0 });
  if (!found.ok) throw new Error(found.fault.code);
  const plain = found.value[0]!.partsDeltaE00;
  const down = letDownParts(target, tint, invented)!;
  expect(down.deltaE00).toBeLessThan(Math.min(1, plain));
  const counts = down.parts.map((p) => p.parts);
  expect(counts.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(32);
  expect(Math.max(...counts)).toBeLessThanOrEqual(12 * Math.min(...counts));
  // The two that colour it are under one part in 32, and come as let-downs.
  const weak = ['blue', 'red'];
  expect(down.letDowns.map((d) => d.pigment).toSorted()).toEqual(weak);
  expect(
    down.parts
      .filter((p) => p.letDown)
      .map((p) => p.pigment)
      .toSorted(),
  ).toEqual(weak);
});

test('its printed colour is that of all that goes in', () => {
  const down = letDownParts(target, tint, invented)!;
  const amounts = down.parts.flatMap(({ pigment, parts, letDown: weak }) => {
    const { white, whiteParts } = down.letDowns.find((d) => d.pigment === pigment) ?? {
      white: '',
      whiteParts: 0,
    };
    if (!weak) return [{ pigment, amount: parts }];
    return [
      { pigment, amount: parts / (1 + whiteParts) },
      { pigment: white, amount: (parts * whiteParts) / (1 + whiteParts) },
    ];
  });
  expect(deltaE00(predictColour(amounts, invented), down.lab)).toBeLessThan(1e-6);
  expect(down.deltaE00).toBeCloseTo(deltaE00(target, down.lab), 12);
});

test('none where every pigment has its part, or without a white', () => {
  const even = [
    { pigment: 'white', share: 0.6 },
    { pigment: 'red', share: 0.4 },
  ];
  expect(letDownParts([60, 30, 20], even, invented)).toBeNull();
  expect(letDownParts(target, tint, { ...invented, white: null })).toBeNull();
});
