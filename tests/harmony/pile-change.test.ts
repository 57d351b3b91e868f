import { expect, test } from 'vitest';
import { pileChange } from '../../src/harmony/pile-change.ts';
import { pileChangeWords } from '../../src/messages/pile-change-text.ts';
import { joinWords } from '../../src/wording.ts';

const recipe = (shares: Record<string, number>) => {
  const sum = Object.values(shares).reduce((a, b) => a + b, 0);
  return Object.entries(shares).map(([pigment, share]) => ({ pigment, share: share / sum }));
};
const words = (from: Record<string, number>, to: Record<string, number>) =>
  pileChangeWords(pileChange(recipe(from), recipe(to)), (pigment) => pigment.replace('_', ' '));

test.each([
  [
    { white: 8, red_earth: 2, ochre: 2 },
    { white: 6, red_earth: 2.4, ochre: 2 },
    'a little red earth more, a little less white',
  ],
  [{ white: 8, red_earth: 2, ochre: 2 }, { white: 8, red_earth: 4, ochre: 2 }, 'more red earth'],
  [{ white: 8, ochre: 2 }, { white: 8, ochre: 2, umber: 0.1 }, 'a touch of umber'],
  [{ white: 8, ochre: 2 }, { white: 8, ochre: 2, umber: 1 }, 'umber added'],
  [{ white: 8, ochre: 2, umber: 1 }, { white: 8, ochre: 2 }, 'no umber'],
  [{ white: 8, ochre: 2 }, { white: 16, ochre: 4 }, 'the same pile'],
  [{ white: 1 }, { smalt: 1, umber: 1 }, 'another pile: smalt and umber'],
  [{ white: 10, ochre: 1, umber: 1 }, { white: 10, ochre: 4, umber: 1 }, 'much more ochre'],
])('%j to %j is “%s”', (from, to, said) => {
  expect(words(from, to)).toBe(said);
});

test('of two pigments alone it is the same whether one grows or the other shrinks', () => {
  const pile = words({ white: 8, red_earth: 2 }, { white: 8, red_earth: 4 });
  expect(['less white', 'more red earth']).toContain(pile);
});

test('a list in a sentence', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(joinWords)).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ]);
});
