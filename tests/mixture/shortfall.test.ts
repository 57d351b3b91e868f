import { expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { shortfallWords } from '../../src/messages/mixture-messages.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { missingPigmentsFor, shortfallOf } from '../../src/mixture/shortfall.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { invented } from './invented.ts';

const nearest = (target: Lab, shelf = invented) => {
  const found = findMixtures([target], shelf, { alternatives: 0 });
  if (!found.ok) throw new Error(found.fault.code);
  return found.value[0]!;
};

test('a colour within reach has no shortfall', () => {
  const target: Lab = [55, 2, 3];
  expect(shortfallOf(target, nearest(target))).toBeNull();
});

const white = predictColour([{ pigment: 'white', amount: 1 }], invented);
test.each([
  {
    target: [45, 85, 55],
    axis: 'chroma',
    says: /^This is brighter than any .*red.* on the shelf; /,
  },
  {
    target: [white[0] + 3, white[1], white[2]],
    axis: 'lightness',
    says: /^This is lighter than any \w+ on the shelf; /,
  },
  { target: [5, 0, 0], axis: 'lightness', says: /^This is deeper than any colour on the shelf; / },
] as { target: Lab; axis: string; says: RegExp }[])(
  '$target falls short in $axis',
  ({ target, axis, says }) => {
    const found = shortfallOf(target, nearest(target))!;
    expect(found.axis).toBe(axis);
    const words = shortfallWords(found);
    expect(words).toMatch(says);
    expect(words).toMatch(new RegExp(`gives up .*${axis}.*\\.$`));
  },
);

test('what is given up is never said to be kept', () => {
  // A little beyond reach on every axis: each alone would count as kept.
  const found = shortfallOf([60, 20, 10], { lab: [60.7, 20.7, 9.4], deltaE00: 1.02 })!;
  expect([found.axis, found.kept]).toEqual(['lightness', ['chroma', 'hue']]);
});

test('the pigment that would reach a colour is named, others are not', () => {
  const without = {
    ...invented,
    paints: invented.paints.filter((p) => !['red', 'earth'].includes(p.pigment)),
  };
  const target = predictColour(
    [
      { pigment: 'red', amount: 3 },
      { pigment: 'white', amount: 2 },
    ],
    invented,
  );
  const missing = (on: Shelf, lab: Lab) => {
    const found = missingPigmentsFor(lab, on, invented.paints);
    if (!found.ok) throw new Error(found.fault.code);
    return found.value;
  };
  const lacks = missing(without, target);
  expect(lacks[0]).toMatchObject({ pigment: 'red', reachable: true });
  // Earth comes nearer too; what the shelf has is not named.
  expect(lacks.map((l) => l.pigment)).toEqual(['red', 'earth']);
  expect(missing(invented, [55, 2, 3])).toEqual([]);
});

test('wishes that no mixture of the shelf meets are a fault, not a list of every pigment', () => {
  const constraints = { mustHold: ['red'], leaveOut: ['red'] };
  expect(missingPigmentsFor([55, 2, 3], invented, invented.paints, { constraints })).toEqual({
    ok: false,
    fault: { code: 'wanted-and-left-out', pigment: 'red', by: 'leaveOut' },
  });
});
