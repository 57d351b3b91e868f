import { expect, test } from 'vitest';
import { pairHarmony } from '../../src/colour/pair-harmony.ts';
import { PERIOD_PAIRS } from '../../src/harmony/period-practice.ts';
import type { Relation } from '../../src/harmony/roles-and-intervals.ts';
import {
  intervalWords,
  periodWords,
  roleWords,
  temperatureWords,
} from '../../src/messages/relation-messages.ts';

const colours = ['green', 'blue-grey', 'red'].map((name) => ({
  name,
  lab: [50, 0, 0] as const,
  share: 1 / 3,
}));

test.each([
  [
    { dominant: 0, foil: 1, accent: 2 },
    'The green is dominant, the blue-grey is its foil, the red is the accent.',
  ],
  [{ dominant: 2, foil: 1, accent: null }, 'The red is dominant, the blue-grey is its foil.'],
  [{ dominant: 1, foil: null, accent: null }, 'The blue-grey is dominant.'],
])('roles %j', (roles, words) => {
  expect(roleWords(roles, colours)).toBe(words);
});

test.each([
  [0.1, 0.09, 'mostly neither warm nor cool'],
  [0.5, 0.01, 'warm throughout'],
  [0.01, 0.5, 'cool throughout'],
  [0.7, 0.2, 'warm, with a cool note'],
  [0.2, 0.7, 'cool, with a warm note'],
  [0.5, 0.3, 'more warm than cool'],
  [0.3, 0.5, 'more cool than warm'],
  [0.5, 0.4, 'warm and cool in balance'],
])('%d warm and %d cool are %s', (warm, cool, words) => {
  const neither = 1 - warm - cool;
  expect(temperatureWords({ warm, cool, neither, measure: 0 })).toBe(words);
});

/** The relation of green to red with one thing changed. */
const words = (change: Partial<Pick<Relation, 'lightness' | 'chroma' | 'hue'>>) =>
  intervalWords(
    {
      ...{ of: 0, beside: 2, lightness: 0, chroma: 0, hue: { turnDeg: 0, hueless: [] } },
      ...{ score: pairHarmony([50, 0, 0], [50, 0, 0]), period: [], ...change },
    },
    colours,
  );

test.each([
  [-2.9, 'the green and the red are equally light'],
  [3, 'the red is a little lighter than the green'],
  [-10, 'the red is darker than the green'],
  [29.9, 'the red is lighter than the green'],
  [-30, 'the red is much darker than the green'],
])('%d of L*: %s', (lightness, sentence) => {
  expect(words({ lightness }).lightness).toBe(sentence);
});

test.each([
  [3.9, 'the green and the red are equally strong'],
  [-4, 'the red is a little duller than the green'],
  [12, 'the red is brighter than the green'],
  [-30, 'the red is much duller than the green'],
])('%d of C*: %s', (chroma, sentence) => {
  expect(words({ chroma }).chroma).toBe(sentence);
});

test.each([
  [-11, [], 'the green and the red are of one hue'],
  [39, [], 'the green and the red are neighbours in hue'],
  [-79, [], 'the green and the red are of related hues'],
  [92, [], 'the green and the red are far apart in hue'],
  [180, [], 'the green and the red are of opposed hues'],
  [0, [2], 'the red has hardly a hue beside the other'],
  [0, [0, 2], 'the green and the red have hardly a hue'],
])('a turn of %d degrees, without hue %j: %s', (turnDeg, hueless, sentence) => {
  expect(words({ hue: { turnDeg, hueless } }).hue).toBe(sentence);
});

test('every row of period practice can be said', () => {
  expect(PERIOD_PAIRS.length).toBeGreaterThan(5);
  for (const row of PERIOD_PAIRS) expect(periodWords(row)).toMatch(/^[A-Z].*: .*\(.+\)\./);
  expect(periodWords(PERIOD_PAIRS.find(({ held }) => held === 'held; disputed')!)).toBe(
    'Blue and green: held to go together, but disputed (Leonardo da Vinci, A Treatise on Painting (English edition)). He held that green gains nothing beside blue.',
  );
});
