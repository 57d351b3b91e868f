import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import type { MixOptions } from '../../src/mixture/mixture-finder.ts';
import type { MixtureAnswer } from '../../src/mixture/mixture-types.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { evenly } from '../evenly.ts';
import { invented, manyPaints } from './invented.ts';

const mix = (targets: readonly Lab[], shelf: Shelf, options: MixOptions = {}): MixtureAnswer[] => {
  const found = findMixtures(targets, shelf, options);
  if (!found.ok) throw new Error(JSON.stringify(found.fault));
  return found.value;
};
const names = (answer: MixtureAnswer) => answer.recipe.map((s) => s.pigment);
const grey: Lab = [55, 2, 3];

describe('a mixture', () => {
  test('has shares that sum to 1, none at zero, largest first', () => {
    const answers = mix([grey, [40, 30, 20], [70, -10, 40]], invented);
    expect(answers).toHaveLength(3);
    expect(answers.flatMap(({ alternatives }) => alternatives).length).toBeGreaterThan(2);
    for (const answer of answers) {
      for (const one of [answer, answer.simplest, ...answer.alternatives]) {
        const shares = one.recipe.map((s) => s.share);
        expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
        expect(Math.min(...shares)).toBeGreaterThan(0);
        expect([...shares].sort((a, b) => b - a)).toEqual(shares);
        expect(one.reachable).toBe(one.deltaE00 <= 1);
      }
    }
  });

  test('is the same every time, and the same alone as among others', () => {
    const targets: Lab[] = [grey, [40, 30, 20], [90, 80, -60]];
    const together = mix(targets, invented);
    expect(mix(targets, invented)).toEqual(together);
    expect(targets.map((target) => mix([target], invented)[0])).toEqual(together);
  });

  test('of any recipe of the shelf comes back under 0.1 and never past the limits of its parts', () => {
    const amount = evenly(0.03, 1);
    const recipe = fc.uniqueArray(fc.tuple(fc.nat(invented.paints.length - 1), amount), {
      selector: ([i]) => i,
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(recipe, (some) => {
        const R = opaque(
          some.map(([, share]) => share),
          some.map(([i]) => invented.paints[i]!.paint),
          spectrum<'R'>(),
        );
        const target = labOf(addSurface(R, invented.surface));
        const [answer] = mix([target], invented, { alternatives: 0 });
        expect(answer!.deltaE00).toBeLessThan(0.1);
        const parts = answer!.parts.map((p) => p.parts);
        expect(parts.length).toBeGreaterThan(0);
        expect(parts.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(32);
        expect(parts.every(Number.isInteger)).toBe(true);
      }),
      { numRuns: 40, seed: 4 },
    );
  });
});

describe('constraints', () => {
  const fault = (options: MixOptions) => {
    const found = findMixtures([grey], invented, options);
    return found.ok ? null : found.fault;
  };

  test('leave pigments out and keep pairs apart in every mixture shown', () => {
    const apart: [string, string][] = [['white', 'black']];
    const inStock = ['white', 'black', 'yellow', 'blue', 'red'];
    // Without the constraints each of them would be there.
    const free = mix([grey, [80, 0, 1]], invented, { constraints: { inStock } });
    expect(names(free[0]!)).toEqual(expect.arrayContaining(['red']));
    const paired = mix([grey], invented, { constraints: { inStock, leaveOut: ['red'] } });
    expect(names(paired[0]!)).toEqual(expect.arrayContaining(['white', 'black']));
    const answers = mix([grey, [80, 0, 1]], invented, {
      constraints: { leaveOut: ['red'], apart, inStock },
    });
    expect(answers).toHaveLength(2);
    for (const answer of answers) {
      for (const one of [answer, answer.simplest, ...answer.alternatives]) {
        for (const used of [one.recipe, one.parts].map((list) => list.map((s) => s.pigment))) {
          expect(used.length).toBeGreaterThan(0);
          expect(used.filter((pigment) => !inStock.includes(pigment))).toEqual([]);
          expect(used).not.toContain('red');
          expect(used.includes('white') && used.includes('black')).toBe(false);
        }
      }
    }
  });

  test('a wanted pigment is in every mixture, at one part in 32 or more', () => {
    const constraints = { mustHold: ['red'] };
    const targets: Lab[] = [grey, [60, -20, 20]];
    expect(names(mix(targets, invented)[1]!)).not.toContain('red');
    const answers = mix(targets, invented, { constraints });
    expect(answers).toHaveLength(2);
    for (const answer of answers) {
      for (const one of [answer, answer.simplest, ...answer.alternatives]) {
        const red = one.recipe.find((s) => s.pigment === 'red');
        expect(red?.share).toBeGreaterThanOrEqual(1 / 32 - 1e-12);
        expect(one.parts.some((p) => p.pigment === 'red')).toBe(true);
        expect(one.recipe.length).toBeLessThanOrEqual(4);
      }
    }
  });

  test('a wanted pigment that would be there anyway changes nothing', () => {
    const target: Lab = [45, 25, 15];
    const [free] = mix([target], invented, { most: 3 });
    const [wanted] = mix([target], invented, {
      most: 3,
      constraints: { mustHold: [names(free!)[0]!] },
    });
    expect(wanted!.deltaE00).toBeCloseTo(free!.deltaE00, 3);
  });

  test('no black, and one white at most', () => {
    const targets: Lab[] = [
      [75, 0, 0],
      [66, 20, 30],
    ];
    const white = (name: string) => name === 'white' || name === 'chalk';
    // Freely the first is mixed with black and the second with both whites.
    const free = mix(targets, invented).map(names);
    expect(free[0]).toContain('black');
    expect(free[1]!.filter(white)).toHaveLength(2);
    const constraints = { noBlack: ['black'], oneWhite: ['white', 'chalk'] };
    for (const answer of mix(targets, invented, { constraints })) {
      expect(answer.deltaE00).toBeLessThan(1);
      expect(names(answer)).not.toContain('black');
      expect(names(answer).filter(white)).toHaveLength(1);
    }
  });

  test('that exclude each other are named', () => {
    expect(fault({ constraints: { mustHold: ['red'], leaveOut: ['red'] } })).toEqual({
      code: 'wanted-and-left-out',
      pigment: 'red',
      by: 'leaveOut',
    });
    expect(fault({ constraints: { mustHold: ['black'], noBlack: ['black'] } })).toEqual({
      code: 'wanted-and-left-out',
      pigment: 'black',
      by: 'noBlack',
    });
    expect(fault({ constraints: { mustHold: ['red', 'blue'], apart: [['blue', 'red']] } })).toEqual(
      { code: 'wanted-apart', pigments: ['red', 'blue'], by: 'apart' },
    );
    expect(
      fault({ constraints: { mustHold: ['white', 'chalk'], oneWhite: ['white', 'chalk'] } }),
    ).toEqual({ code: 'wanted-apart', pigments: ['white', 'chalk'], by: 'oneWhite' });
    expect(fault({ most: 1, constraints: { mustHold: ['white', 'red'] } })).toEqual({
      code: 'more-wanted-than-most',
      wanted: 2,
      most: 1,
    });
    expect(fault({ constraints: { mustHold: ['gold'] } })).toEqual({
      code: 'not-on-shelf',
      pigment: 'gold',
    });
    expect(fault({ constraints: { inStock: [] } })).toEqual({ code: 'nothing-left' });
  });
});

describe('bad input', () => {
  test.each([Number.NaN, Number.POSITIVE_INFINITY])('%d is no colour', (bad) => {
    const found = findMixtures([grey, [50, bad, 0]], invented);
    expect(found).toEqual({ ok: false, fault: { code: 'not-a-colour', index: 1 } });
  });

  test('an empty shelf has nothing to mix', () => {
    const found = findMixtures([grey], { ...invented, paints: [] });
    expect(found).toEqual({ ok: false, fault: { code: 'nothing-left' } });
  });

  test.each([0, 7, 2.5])('%d pigments is a programmer’s mistake', (most) => {
    expect(() => findMixtures([grey], invented, { most })).toThrow(RangeError);
  });

  test('a colour that no surface has gets the nearest, and says it is out of reach', () => {
    const [above, vivid, below] = mix(
      [
        [120, 0, 0],
        [50, 500, -500],
        [-20, 0, 0],
      ],
      invented,
    );
    expect(above).toMatchObject({ reachable: false, recipe: [{ pigment: 'white', share: 1 }] });
    expect(below).toMatchObject({ reachable: false, recipe: [{ pigment: 'black', share: 1 }] });
    expect(vivid!.reachable).toBe(false);
    expect(names(vivid!)).toContain('blue');
    for (const { deltaE00: off } of [above!, vivid!, below!]) {
      expect(off).toBeGreaterThan(1);
      expect(Number.isFinite(off)).toBe(true);
    }
  });

  test('one pigment', () => {
    const [answer] = mix([grey], { ...invented, paints: invented.paints.slice(1, 2) });
    expect(answer!.recipe).toEqual([{ pigment: 'black', share: 1 }]);
    expect(answer!.parts).toEqual([{ pigment: 'black', parts: 1 }]);
    expect(answer!.simplest.recipe).toEqual(answer!.recipe);
    expect(answer!.alternatives).toEqual([]);
  });

  test('no white', () => {
    const dark = { ...invented, white: null, paints: invented.paints.slice(1) };
    const [answer] = mix([grey], dark);
    expect(answer!.reachable).toBe(true);
    expect(names(answer!)).toContain('chalk');
    expect(names(answer!)).not.toContain('white');
    expect(answer!.letDown).toBeUndefined();
  });

  test('two identical pigments', () => {
    const twin = { ...invented.paints[2]!, pigment: 'twin' };
    const shelf = { ...invented, paints: [...invented.paints, twin] };
    const [answer] = mix([[45, 30, 20]], shelf);
    expect(answer!.deltaE00).toBeLessThan(1);
    const used = names(answer!);
    expect(used.filter((name) => name === 'twin' || name === twin.label)).toHaveLength(1);
  });

  test('no scattering, or no absorption, or neither', () => {
    const flat = <T extends string>(v: number) => spectrum<T>(new Array<number>(36).fill(v));
    const odd = (pigment: string, K: number, S: number) => ({
      pigment,
      label: pigment,
      paint: { K: flat<'K'>(K), S: flat<'S'>(S) },
    });
    const shelf: Shelf = {
      ...invented,
      paints: [...invented.paints, odd('lake', 0.8, 0), odd('snow', 0, 1), odd('oil', 0, 0)],
    };
    for (const answer of mix([grey, [97, 0, 0], [20, 0, 0]], shelf)) {
      expect(Number.isFinite(answer.deltaE00)).toBe(true);
      expect(answer.reachable).toBe(true);
      expect(names(answer)).not.toContain('oil');
    }
  });

  test('forty-eight pigments', () => {
    const shelf = manyPaints(48);
    const [answer] = mix([[52, 14, 21]], shelf, { alternatives: 2 });
    expect(answer!.deltaE00).toBeLessThan(0.1);
  });
});

describe('long work', () => {
  test('stops when told to, and says how far it is', () => {
    let asked = 0;
    const stopped = () => ++asked > 3;
    const found = findMixtures([grey, [40, 30, 20]], invented, { stopped });
    expect(found).toEqual({ ok: false, fault: { code: 'stopped' } });
    const done: number[] = [];
    mix([grey, [40, 30, 20]], invented, { onProgress: (share) => done.push(share) });
    expect(done).toEqual([0.5, 1]);
  });
});

test('what is kept first is nearer than in the nearest mixture', () => {
  const target: Lab = [55, -70, 40];
  const hue = (lab: Lab) => Math.atan2(lab[2], lab[1]);
  const off = (a: MixtureAnswer) => Math.abs(hue(a.lab) - hue(target));
  const [nearest, byHue, byLightness] = (['nearest', 'hue', 'lightness'] as const).map(
    (keep) => mix([target], invented, { keep })[0]!,
  );
  expect(off(byHue!)).toBeLessThan(off(nearest!));
  expect(Math.abs(byLightness!.lab[0] - 55)).toBeLessThan(Math.abs(nearest!.lab[0] - 55));
  expect(byHue!.deltaE00).toBeGreaterThanOrEqual(nearest!.deltaE00 - 1e-6);
  expect(byHue!.deltaE00).toBe(deltaE00(target, byHue!.lab));
});
