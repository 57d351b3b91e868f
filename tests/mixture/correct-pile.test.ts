import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { correctPile, type PileCorrection } from '../../src/mixture/correct-pile.ts';
import type { MixturePart } from '../../src/mixture/mixture.ts';
import { ofParts, predictColour } from '../../src/mixture/predict.ts';
import { invented } from './invented.ts';

const colour = (parts: readonly MixturePart[]): Lab => predictColour(ofParts(parts), invented);
const mend = (parts: readonly MixturePart[], seen: Lab, target: Lab): PileCorrection => {
  const found = correctPile({ parts, cm3: 20 }, seen, target, invented);
  if (!found.ok) throw new Error(found.fault.code);
  return found.value;
};
const recipe: MixturePart[] = [
  { pigment: 'white', parts: 6 },
  { pigment: 'earth', parts: 3 },
  { pigment: 'blue', parts: 1 },
];

describe('additions', () => {
  test('a pile that is right needs none', () => {
    const found = mend(recipe, colour(recipe), colour(recipe));
    expect(found).toEqual({ now: 0, options: [], slip: null, startAgain: null });
  });

  // Whatever one part was measured wrong, within a factor of three, the rest of the recipe can be
  // added in proportion: additions can always do so.
  test('bring back a batch in which one part was wrong, known or not', () => {
    const names = ['white', 'black', 'red', 'yellow', 'blue', 'green', 'earth'] as const;
    const batch = fc.record({
      used: fc.uniqueArray(fc.constantFrom(...names), { minLength: 2, maxLength: 4 }),
      parts: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 4 }),
      wrong: fc.nat(3),
      log: fc.double({ min: -1.1, max: 1.1, noNaN: true }),
      known: fc.boolean(),
    });
    fc.assert(
      fc.property(batch, ({ used, parts, wrong, log, known }) => {
        const meant: MixturePart[] = used.map((pigment, i) => ({ pigment, parts: parts[i]! }));
        const made = meant.map((p, i) =>
          i === wrong % used.length ? { ...p, parts: p.parts * Math.exp(log) } : p,
        );
        const target = colour(meant);
        const seen = colour(made);
        const found = mend(known ? made : meant, seen, target);
        if (found.now <= 0.5) return;
        const best = found.options[0]!;
        // What the option really gives, added to the batch as it really is.
        const scale = total(made) / (known ? total(made) : slipped(meant, found));
        const real = [...made];
        for (const { pigment, parts: amount } of best.add)
          real.push({ pigment, parts: amount * scale });
        expect(deltaE00(target, colour(real))).toBeLessThan(1);
        expect(best.deltaE00).toBeLessThan(1);
        expect(best.add.every((a) => a.parts > 0)).toBe(true);
      }),
      { numRuns: 60, seed: 9 },
    );
  });
  // A stray pigment can often be outvoted, not always.
  test('mend a batch with a stray pigment, or say that they cannot', () => {
    const names = invented.paints.map((p) => p.pigment);
    const batch = fc.tuple(fc.constantFrom(...names), fc.integer({ min: 1, max: 20 }));
    fc.assert(
      fc.property(batch, ([stray, tenths]) => {
        const made: MixturePart[] = [...recipe, { pigment: stray, parts: tenths / 10 }];
        const found = mend(made, colour(made), colour(recipe));
        if (found.now <= 0.5) return;
        const best = found.options[0];
        if (found.startAgain === null) expect(best!.deltaE00).toBeLessThanOrEqual(1);
        if (!best || best.deltaE00 > 1) expect(found.startAgain?.why).toBe('out-of-reach');
        if (!best) return;
        expect(best.deltaE00).toBeLessThan(found.now);
        const real = colour([...made, ...best.add]);
        expect(deltaE00(real, best.lab)).toBeLessThan(1e-6);
      }),
      { numRuns: 40, seed: 12 },
    );
  });
  const total = (parts: readonly MixturePart[]) => parts.reduce((sum, p) => sum + p.parts, 0);
  const slipped = (parts: readonly MixturePart[], { slip }: PileCorrection) =>
    total(
      parts.map((p) => (p.pigment === slip?.pigment ? { ...p, parts: p.parts * slip.factor } : p)),
    );

  test('name the part that was measured wrong', () => {
    const made = recipe.map((p) => (p.pigment === 'blue' ? { ...p, parts: 2 } : p));
    const { slip } = mend(recipe, colour(made), colour(recipe));
    expect(slip?.pigment).toBe('blue');
    expect(slip?.factor).toBeCloseTo(2, 1);
  });

  test('come smallest first, with amounts for the batch at hand', () => {
    const made = recipe.map((p) => (p.pigment === 'earth' ? { ...p, parts: 4 } : p));
    const { options } = mend(made, colour(made), colour(recipe));
    const reached = options.filter((o) => o.deltaE00 <= 1).map((o) => o.total);
    expect([...reached].sort((a, b) => a - b)).toEqual(reached);
    const [{ add, total: share }] = options as [(typeof options)[number]];
    expect(add.reduce((sum, a) => sum + a.cm3!, 0)).toBeCloseTo(20 * share, 9);
  });

  test('say when the target lies where no addition leads', () => {
    const mud: MixturePart[] = [
      { pigment: 'black', parts: 5 },
      { pigment: 'green', parts: 5 },
    ];
    const found = mend(mud, colour(mud), colour([{ pigment: 'yellow', parts: 1 }]));
    expect(found.startAgain?.why).toMatch(/too-much|out-of-reach/);
    expect(found.startAgain!.fresh).toBeLessThan(0.1);
  });

  test('an error that the model cannot explain is expected again', () => {
    const seen: Lab = [70, 30, -30];
    const found = mend(recipe, seen, [68, 26, -24]);
    expect(found.slip).toBeNull();
    expect(found.options[0]!.deltaE00).toBeLessThan(found.now);
  });

  test('bad input is a fault', () => {
    const fault = (...args: Parameters<typeof correctPile>) => {
      const found = correctPile(...args);
      return found.ok ? null : found.fault;
    };
    const grey: Lab = [50, 0, 0];
    expect(fault({ parts: [] }, grey, grey, invented)).toEqual({ code: 'empty-batch' });
    expect(fault({ parts: recipe }, [Number.NaN, 0, 0], grey, invented)).toEqual({
      code: 'not-a-colour',
      index: 0,
    });
    const gold = [{ pigment: 'gold', parts: 1 }];
    expect(fault({ parts: gold }, grey, grey, invented)).toEqual({
      code: 'not-on-shelf',
      pigment: 'gold',
    });
  });
});
