import { expect, test } from 'vitest';
import { heldOutScenes } from '../tools/specimen-heldout.ts';
import { type Judged, judge, sumOf } from '../tools/specimen-judge.ts';
import { randomScene } from '../tools/specimen-random.ts';
import { sampleScenes } from '../tools/specimen-samples.ts';
import { trainingScenes } from '../tools/specimen-scenes.ts';

const scenes = new Map(
  [
    ...trainingScenes(),
    ...sampleScenes(),
    ...heldOutScenes(),
    randomScene(503),
    randomScene(505),
  ].map((scene) => [scene.name, scene]),
);
const judged: Judged[] = [];

// Twelve of our scenes, small, each with what it holds; all of them, larger, are in
// tests/simulation/specimens.test.ts.
test.each([
  ['robin in a bare hedge', 5],
  ['snow and grey rocks', 4],
  ['dusk', 5],
  ['black cat by a red curtain', 4],
  ['autumn floor', 5],
  ['near-grey still life', 5],
  ['jay-feather', 6],
  ['magpie on snow', 4],
  ['lamp-lit table', 5],
  ['greys of a bathroom sill', 5],
  ['by lot 503', 5],
  ['by lot 505', 5],
])('%s: %d regions, a colour for each and no other', async (name, regions) => {
  const one = await judge(scenes.get(name)!, 320, [7]);
  judged.push(one);
  const { ours, leftOut } = one;
  expect(leftOut).toEqual([]);
  expect([ours.regions, ours.found, ours.colours]).toEqual([regions, regions, regions]);
  expect(ours.missed).toEqual([]);
  expect(ours.sum / regions).toBeLessThan(1);
  expect(ours.sharesOff).toBe(0);
});

// Scenes count only where a general clustering fails on some of them.
test('plain k-means with seven colours finds at most 85 % of them', () => {
  expect(judged).toHaveLength(12);
  const plain = judged.map((one) => one.plain.get(7)!);
  const regions = sumOf(plain, (s) => s.regions);
  expect(regions).toBe(58);
  const found = sumOf(plain, (s) => s.found) / regions;
  console.log(`plain k-means finds ${(100 * found).toFixed(0)} %`);
  expect(found).toBeLessThanOrEqual(0.85);
});
