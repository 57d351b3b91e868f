import { expect, test } from 'vitest';
import { consensusOf } from '../../src/segmentation/consensus.ts';
import type { Superpixels } from '../../src/segmentation/superpixels.ts';

/** Superpixels along a line of lightness, each of weight 1 by default. */
function superpixels(count: number, weight = (_: number) => 1): Superpixels {
  const numbers = (f: (i: number) => number) =>
    Float64Array.from({ length: count }, (_, i) => f(i));
  return {
    count,
    weight: numbers(weight),
    cells: numbers(() => 10),
    L: numbers((i) => (i + 1) / (count + 1)),
    a: numbers(() => 0),
    b: numbers(() => 0),
    ofBin: Uint16Array.from({ length: count }, (_, i) => i),
  };
}

/** Trials as words: a digit an atom, “012” times how often. */
const runs = (...groupings: readonly (readonly [string, number])[]): Uint8Array[] =>
  groupings.flatMap(([word, times]) =>
    Array.from({ length: times }, () => Uint8Array.from(word, Number)),
  );

test('a grouping that all runs share is kept, however they number it', () => {
  const { group: of } = consensusOf(
    superpixels(6),
    runs(['000112', 3], ['211100', 0], ['222001', 4]),
    undefined,
  );
  expect([...of]).toEqual([0, 0, 0, 1, 1, 2]);
});

test('a group that fewer than half tell joins the one that it is mostly with', () => {
  // The third pair stands alone in 4 of 10, with the second in 5, with the first in one.
  const { group: of } = consensusOf(
    superpixels(6),
    runs(['001122', 4], ['001111', 5], ['001100', 1]),
    undefined,
  );
  expect([...of]).toEqual([0, 0, 1, 1, 1, 1]);
});

test('an atom on the edge goes where it is most often', () => {
  const { group: of } = consensusOf(
    superpixels(7),
    runs(['0000111', 6], ['0001111', 5]),
    undefined,
  );
  expect([...of]).toEqual([0, 0, 0, 0, 1, 1, 1]);
});

test('a small group that most runs find is kept, however little it weighs', () => {
  const { group: of } = consensusOf(
    superpixels(5, (i) => (i === 4 ? 1e-4 : 1)),
    runs(['00112', 7], ['00111', 3]),
    undefined,
  );
  expect([...of]).toEqual([0, 0, 1, 1, 2]);
});

test('as many groups as requested, where the runs find as many', () => {
  const found = runs(['001122', 4], ['001111', 6]);
  expect(new Set(consensusOf(superpixels(6), found, 3).group).size).toBe(3);
  expect(new Set(consensusOf(superpixels(6), found, 2).group).size).toBe(2);
  expect(new Set(consensusOf(superpixels(6), found, 1).group).size).toBe(1);
});

test('confidence of a superpixel, and whether more runs could change the result', () => {
  const edge = consensusOf(superpixels(7), runs(['0000111', 6], ['0001111', 5]), undefined);
  expect(edge.confidence[3]).toBeLessThan(0.05);
  for (const i of [0, 1, 2, 4, 5, 6]) expect(edge.confidence[i]).toBeGreaterThan(0.5);
  expect(edge.isStable).toBe(false);
  expect(consensusOf(superpixels(6), runs(['000112', 32]), undefined).isStable).toBe(true);
  // Whether the last is a group of its own is a matter of the draw, until there are many more.
  const draw = (times: number) =>
    consensusOf(superpixels(6), runs(['001122', 10 * times], ['001111', 7 * times]), undefined);
  expect(draw(1).isStable).toBe(false);
  expect(draw(20).isStable).toBe(true);
});
