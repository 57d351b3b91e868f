import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { type FewestOptions, fewest } from '../../src/harmony/fewest-pigments.ts';
import { variantTarget } from '../../src/harmony/variant-target.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { invented } from '../mixture/invented.ts';

const find = (colours: readonly Lab[], options: FewestOptions = {}) => {
  const found = fewest(colours, invented, options);
  if (!found.ok) throw new Error(found.fault.code);
  return found.value;
};
const pile = (...parts: [string, number][]): Lab =>
  predictColour(
    parts.map(([pigment, amount]) => ({ pigment, amount })),
    invented,
  );
const harmony: Lab[] = [
  pile(['white', 4], ['red', 1]),
  pile(['white', 1], ['red', 2], ['blue', 1]),
  pile(['white', 6], ['blue', 1]),
];

/** Every palette of so many pigments, tried. */
function exhaustive(colours: readonly Lab[], count: number): number {
  const names = invented.paints.map((p) => p.pigment);
  let best = Number.POSITIVE_INFINITY;
  const walk = (from: number, chosen: readonly string[]) => {
    if (chosen.length === count) {
      const found = findMixtures(colours, invented, {
        alternatives: 0,
        constraints: { inStock: chosen },
      });
      if (found.ok) best = Math.min(best, Math.max(...found.value.map((a) => a.deltaE00)));
      return;
    }
    for (let i = from; i < names.length; i++) walk(i + 1, [...chosen, names[i]!]);
  };
  walk(0, []);
  return best;
}

describe('the fewest pigments of a harmony', () => {
  test('three made of three are found again', () => {
    const { enough, curve } = find(harmony, { within: 0.5 });
    expect([...enough!.pigments].sort()).toEqual(['blue', 'red', 'white']);
    expect(curve).toHaveLength(3);
    expect(enough!.worst).toBeLessThan(0.1);
  });

  test('no palette of so many pigments does better by more than 0.5', () => {
    const some: Lab[] = [...harmony, [60, 10, 40], [45, -15, 5]];
    const { curve } = find(some);
    expect(curve.length).toBeGreaterThanOrEqual(4);
    for (const step of curve.slice(0, 4))
      expect(step.worst - exhaustive(some, step.count)).toBeLessThan(0.5);
  });

  test('the curve counts up and never rises', () => {
    const { curve } = find([...harmony, [60, 10, 40], [45, -15, 5], [85, 2, 20]]);
    expect(curve.length).toBeGreaterThan(3);
    curve.forEach((step, i) => {
      expect(step.count).toBe(i + 1);
      expect(step.pigments).toHaveLength(step.count);
      if (i > 0) expect(step.mean).toBeLessThanOrEqual(curve[i - 1]!.mean + 1e-9);
    });
  });

  test('a colour out of reach does not hide what suffices for the others', () => {
    const { enough, shelf } = find([...harmony, [50, 95, 70]]);
    expect(shelf.at(-1)).toBeGreaterThan(2);
    expect(enough).not.toBeNull();
    expect(enough!.deltaE00.at(-1)! - shelf.at(-1)!).toBeLessThanOrEqual(1);
  });

  test('variants are mixed too: more pigments, never fewer, and each is judged', () => {
    const [alone, varied] = [find(harmony), find(harmony, { variants: 'middle' })];
    expect(alone.sought).toHaveLength(3);
    expect(varied.sought).toHaveLength(21);
    expect(varied.sought.slice(0, 3)).toEqual(alone.sought);
    for (const { of, way, lab } of varied.sought.slice(3))
      expect(lab).toEqual(variantTarget(harmony[of]!, way!, 'middle').lab);
    expect(varied.enough!.count).toBeGreaterThanOrEqual(alone.enough!.count);
    // The figures of the curve are those of a search with that palette alone.
    const { pigments, deltaE00 } = varied.enough!;
    const found = findMixtures(
      varied.sought.map(({ lab }) => lab),
      invented,
      { alternatives: 0, constraints: { inStock: pigments } },
    );
    if (!found.ok) throw new Error(found.fault.code);
    found.value.forEach((answer, i) => {
      expect(deltaE00[i]).toBeCloseTo(answer.deltaE00, 1);
    });
  });

  test('what is wanted in every pile stands in every palette', () => {
    const { curve, enough } = find(harmony, { constraints: { mustHold: ['earth', 'white'] } });
    expect(curve[0]!.count).toBe(2);
    for (const { count, pigments } of curve) {
      expect(pigments).toHaveLength(count);
      expect(pigments).toEqual(expect.arrayContaining(['earth', 'white']));
    }
    // Under it no palette of three can do what red, blue and white did.
    expect(enough?.count).toBe(4);
  });

  test('progress rises to the end', () => {
    const seen: number[] = [];
    find(harmony, { variants: 'small', onProgress: (done) => seen.push(done) });
    expect(seen.length).toBeGreaterThan(10);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
  });

  test('bad input and stopping are faults', () => {
    const fault = (colours: Lab[], options = {}) => {
      const found = fewest(colours, invented, options);
      return found.ok ? null : found.fault;
    };
    expect(fault([[Number.NaN, 0, 0]])).toEqual({ code: 'not-a-colour', index: 0 });
    expect(fault(harmony, { stopped: () => true })).toEqual({ code: 'stopped' });
    expect(fault(harmony, { constraints: { inStock: [] } })).toEqual({ code: 'nothing-left' });
    const both = { mustHold: ['red'], leaveOut: ['red'] };
    expect(fault(harmony, { constraints: both })).toMatchObject({ code: 'wanted-and-left-out' });
  });
});
