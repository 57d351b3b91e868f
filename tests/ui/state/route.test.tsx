import { expect, test } from 'vitest';
import { hrefOf, readRoute } from '../../../src/ui/state/route.ts';

test.each([
  ['', 'walk', null, []],
  ['#', 'walk', null, []],
  ['#/walk', 'walk', null, []],
  ['#/palette/sheet/2025-09-15', 'palette', 'sheet', ['2025-09-15']],
  ['#/book/a%2Fb', 'book', 'a/b', []],
])('%s leads somewhere', (hash, place, open, within) => {
  expect(readRoute(hash)).toEqual({ place, open, within });
});

test.each(['#/nowhere', '#/walks', '#//walk', '#/harmony/%E0%A4%A'])('%s is lost', (hash) => {
  expect(readRoute(hash).lost).toBe(true);
});

test('an address is read as it was written', () => {
  expect(readRoute(hrefOf('book', 'of 100 %/½', 'ä'))).toEqual({
    place: 'book',
    open: 'of 100 %/½',
    within: ['ä'],
  });
});
