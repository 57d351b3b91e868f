import { expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { masstonesOf, nearestMasstoneOf } from '../../src/pigment/nearest-masstone.ts';
import { starterShelf, wholeShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const of = (id: string): Lab => masstonesOf(shelf).find(({ pigment }) => pigment === id)!.lab;

test('a masstone is called by its name alone', () => {
  expect(nearestMasstoneOf(of('red_earth'), shelf)).toMatchObject({
    pigment: 'red_earth',
    change: '',
    words: 'red earth',
  });
});

test('what differs is said after the name', () => {
  const [L, a, b] = of('red_earth');
  const near = nearestMasstoneOf([L + 9, a * 0.8, b * 0.8], shelf)!;
  expect(near.pigment).toBe('red_earth');
  expect(near.words).toBe('near red earth, lighter, a little duller');
  expect(near.deltaE00).toBeGreaterThan(1);
});

test('names of places and people keep their capital', () => {
  const whole = wholeShelf();
  const prussian = masstonesOf(whole).find(({ pigment }) => pigment === 'prussian_blue')!.lab;
  expect(nearestMasstoneOf(prussian, whole)!.words).toBe('Prussian blue');
});

test('names of a file stay letter for letter', () => {
  const named = shelf.paints.map((paint) => ({
    ...paint,
    pigment: "Payne's GREY",
    label: "Payne's GREY",
  }));
  const file = { ...shelf, paints: named.slice(0, 1) };
  expect(nearestMasstoneOf([50, 0, 0], file)!.words).toMatch(/^near Payne's GREY, /);
});

test('an empty shelf has no words', () => {
  expect(nearestMasstoneOf([50, 0, 0], { ...shelf, paints: [] })).toBeNull();
});
