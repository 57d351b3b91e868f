import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chroma, hueTurnDeg, type Lab } from '../../src/colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../../src/colour/oklab.ts';
import { IDENTITY_MOVE, moveAll } from '../../src/harmony/harmony-move.ts';
import { transpose } from '../../src/harmony/transpose.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { evenly } from '../evenly.ts';
import { invented } from '../mixture/invented.ts';

const find = (colours: readonly Lab[], shelf = invented) => {
  const found = transpose(colours, shelf);
  if (!found.ok) throw new Error(found.fault.code);
  return found.value;
};
const sunny: Lab[] = [
  [96, -4, 30],
  [70, -35, 55],
  [55, 60, 45],
  [40, 15, -60],
  [12, 3, 4],
];
const hue = (lab: Lab) => oklabHueDeg(oklabOfLab(lab))!;

describe('transposing', () => {
  test('leaves a reachable harmony as it is', () => {
    const harmony = [
      [
        { pigment: 'white', amount: 3 },
        { pigment: 'red', amount: 1 },
      ],
      [
        { pigment: 'white', amount: 1 },
        { pigment: 'earth', amount: 1 },
      ],
    ].map((pile) => predictColour(pile, invented));
    const { transposed } = find(harmony);
    expect(transposed.move).toEqual(IDENTITY_MOVE);
    expect(transposed.colours.map((c) => c.to)).toEqual(harmony);
  });

  test('brings every colour of a sunny harmony into reach', () => {
    const { transposed, alone } = find(sunny);
    expect(alone.reached).toBe(false);
    expect(transposed.reached).toBe(true);
    expect(transposed.colours).toHaveLength(sunny.length);
    for (const { missed } of transposed.colours) expect(missed).toBeLessThanOrEqual(1);
  });

  test('keeps the intervals: lightness in proportion, hues apart, chroma in ratio', () => {
    const { transposed } = find(sunny);
    const { move } = transposed;
    const to = transposed.colours.map((c) => c.to);
    for (const [i, lab] of sunny.entries()) {
      for (const [j, other] of sunny.entries()) {
        if (i === j) continue;
        expect(to[i]![0] - to[j]![0]).toBeCloseTo(move.lightness * (lab[0] - other[0]), 5);
        expect(chroma(to[i]!) / chroma(to[j]!)).toBeCloseTo(chroma(lab) / chroma(other), 3);
        const turn = hueTurnDeg(hue(lab), hue(other));
        expect(hueTurnDeg(hue(to[i]!), hue(to[j]!))).toBeCloseTo(turn, 2);
      }
    }
  });

  test('loses less of the intervals than matching each colour alone', () => {
    const { transposed, alone, keyed } = find(sunny);
    expect(transposed.lost.lightness).toBeLessThan(alone.lost.lightness);
    expect(transposed.lost.hueDeg).toBeLessThan(alone.lost.hueDeg);
    expect(transposed.lost.chroma).toBeLessThan(alone.lost.chroma);
    expect(keyed.colours).toHaveLength(sunny.length);
  });

  test('any move keeps the order of lightness and of hue', () => {
    const colour = fc.tuple(
      fc.integer({ min: 10, max: 90 }),
      fc.integer({ min: -40, max: 40 }),
      fc.integer({ min: -40, max: 40 }),
    );
    const move = fc.record({
      lightness: evenly(0.1, 1),
      shift: fc.integer({ min: -8, max: 8 }),
      chroma: evenly(0.1, 1),
      turnDeg: fc.integer({ min: -12, max: 12 }),
    });
    const counted = { lightness: 0, hue: 0 };
    fc.assert(
      fc.property(fc.array(colour, { minLength: 2, maxLength: 6 }), move, (colours, how) => {
        const to = moveAll(colours, how);
        for (const [i, a] of colours.entries()) {
          for (const [j, b] of colours.entries()) {
            if (a[0] < b[0]) {
              counted.lightness++;
              expect(to[i]![0]).toBeLessThan(to[j]![0]);
            }
            if (i === j || chroma(a) < 5 || chroma(b) < 5) continue;
            const turn = hueTurnDeg(hue(a), hue(b));
            if (Math.abs(turn) >= 170) continue;
            counted.hue++;
            expect(hueTurnDeg(hue(to[i]!), hue(to[j]!))).toBeCloseTo(turn, 1);
          }
        }
      }),
      { numRuns: 60, seed: 6 },
    );
    expect(counted.lightness).toBeGreaterThan(100);
    expect(counted.hue).toBeGreaterThan(100);
  });

  test('bad input and stopping are faults', () => {
    const fault = (colours: Lab[], options = {}) => {
      const found = transpose(colours, invented, options);
      return found.ok ? null : found.fault;
    };
    expect(fault([[0, Number.NaN, 0]])).toEqual({ code: 'not-a-colour', index: 0 });
    expect(fault(sunny, { stopped: () => true })).toEqual({ code: 'stopped' });
  });

  test('one pigment: everything goes to it, and it is said that nothing is reached', () => {
    const { transposed } = find(sunny, { ...invented, paints: invented.paints.slice(2, 3) });
    expect(transposed.reached).toBe(false);
    expect(transposed.colours).toHaveLength(sunny.length);
    expect(Math.max(...transposed.colours.map(({ missed }) => missed))).toBeGreaterThan(1);
  });
});
