import { describe, expect, test } from 'vitest';
import {
  collectEvidence,
  entryOf,
  hasUnfittedEvidence,
  loggedPile,
  placeId,
  placeOfId,
  storedSurface,
} from '../../../src/book/schema/calibration-evidence.ts';
import type { Bodies, Entry, Kind } from '../../../src/book/schema/record.ts';
import { spectrum } from '../../../src/colour/grid.ts';
import { labOf } from '../../../src/colour/lab.ts';
import { addEntry, editEntry } from '../../../src/pigment/edit-stock.ts';
import { starterStock } from '../../../src/pigment/starter-shelf.ts';
import { draftOf, type Stock } from '../../../src/pigment/stock.ts';
import { bodies } from '../kinds.ts';

const entryFrom = <K extends Kind>(kind: K, body: Bodies[K]) =>
  ({ id: `${kind}-0001`, kind, body }) as unknown as Entry<K>;

// The ids of the book's own examples.
let stock: Stock = { ...starterStock(), entries: [], white: 'stock-1' };
for (const [id, pigment, lot] of [
  ['stock-1', 'lead_white', ''],
  ['stock-2', 'red_earth', '7'],
] as const) {
  const added = addEntry(stock, { ...draftOf(pigment), lot }, id);
  if (!added.ok) throw new Error('not added');
  stock = added.value;
}
const card = entryFrom('card', { ...bodies.card, leftOut: [] });
const curves = entryFrom('curves', bodies.curves);
const pile = entryFrom('pile', {
  ...bodies.pile,
  mixture: {
    ...bodies.pile.mixture,
    parts: [
      { pigment: 'red_earth', parts: 2 },
      { pigment: 'lead_white', parts: 3 },
    ],
  },
  lots: [{ pigment: 'red_earth', lot: '7', entry: 'stock-2' }],
});
const all = { cards: [card], curves: [curves], piles: [pile] };
const none = { cards: [], curves: [], piles: [] };

describe('what the book tells of the paints on the shelf', () => {
  test('the same, whichever way the shelf is looked at', () => {
    const varnished = { ...stock, surface: { ...stock.surface, specular: 'excluded' as const } };
    expect(collectEvidence(all, varnished)).toEqual(collectEvidence(all, stock));
    expect(storedSurface(varnished)).toEqual(storedSurface(stock));
  });

  test('swatches, samples and piles, by the ids of the shelf’s entries', () => {
    const { swatches, ofOthers } = collectEvidence(all, stock);
    expect(ofOthers).toBe(0);
    expect(
      swatches.map(({ kind, parts }) => [kind, parts.map((p) => `${p.parts} ${p.pigment}`)]),
    ).toEqual([
      ['photographed', ['1 stock-2', '4 stock-1']],
      ['measured', ['1 stock-2']],
      ['photographed', ['2 stock-2', '3 stock-1']],
    ]);
    const [place, sample, logged] = swatches;
    expect(place).toMatchObject({ lab: [61, 18, 16], sd: 1.5, date: '2031-05-18', R: null });
    expect(placeOfId(place!.id)).toEqual({ card: card.id, number: 4 });
    expect(placeOfId(sample!.id)).toBeNull();
    // Measured without gloss on a shelf that is seen with it: all of the surface's k1 is added.
    expect(sample!.R![5]! - bodies.curves.samples[0]!.reflectance[5]!).toBeCloseTo(0.03, 12);
    expect(logged).toMatchObject({ logged: true, lab: [45, 19, 17] });
    expect(Array.from(logged!.R!)).toEqual(bodies.pile.reflectance);
  });

  test('nothing of another lot, of a paint off the shelf, or of a place that was left out', () => {
    const other = editEntry(stock, 'stock-2', { lot: '8' });
    if (!other.ok) throw new Error('not changed');
    expect(collectEvidence(all, other.value)).toEqual({ swatches: [], ofOthers: 3 });
    expect(collectEvidence(all, { ...stock, entries: [] })).toEqual({ swatches: [], ofOthers: 3 });
    const left = entryFrom('card', bodies.card);
    expect(collectEvidence({ ...none, cards: [left] }, stock)).toEqual({
      swatches: [],
      ofOthers: 0,
    });
    const { reading: _, ...unread } = bodies.card;
    const waiting = entryFrom('card', unread);
    expect(collectEvidence({ ...none, cards: [waiting] }, stock).swatches).toEqual([]);
  });

  test('a pile is foreseen as it was on its day, and by eye it counts for little', () => {
    const { reflectance: _, ...byEye } = pile.body;
    const logged = loggedPile(entryFrom('pile', byEye), stock)!;
    expect(logged.foreseen).toEqual(bodies.pile.mixture.partsLab);
    const seen = loggedPile(entryFrom('pile', { ...byEye, known: 'photographed' }), stock)!;
    expect(logged.sd!).toBeGreaterThan(2 * seen.sd!);
  });

  test('a mixture’s pigment is the lot it names, else the one with no curve of its own', () => {
    const curve = { known: 'measured' as const, K: [], S: [] };
    const two: Stock = {
      ...stock,
      entries: [
        { ...stock.entries[1]!, id: 'a', curve },
        { ...stock.entries[1]!, id: 'b' },
      ],
    };
    expect(entryOf('red_earth', two)?.id).toBe('b');
    expect(entryOf('red_earth#a', two)?.id).toBe('a');
    expect(entryOf('smalt', two)).toBeNull();
  });
});

test('there is news until the shelf’s curves were fitted to all that was seen', () => {
  const learnt = collectEvidence(all, stock);
  expect(hasUnfittedEvidence(learnt, stock)).toBe(true);
  expect(hasUnfittedEvidence(collectEvidence(none, stock), stock)).toBe(false);
  const trust = { date: '2031-05-18', rough: false, swatches: 2, piles: 1 };
  const curve = { known: 'measured' as const, K: [], S: [] };
  const fitted = (piles: number): Stock => ({
    ...stock,
    entries: stock.entries.map((entry) => ({
      ...entry,
      curve: { ...curve, trust: { ...trust, piles, expected: { median: 1, tenth: 2 } } },
    })),
  });
  expect(hasUnfittedEvidence(learnt, fitted(1))).toBe(false);
  expect(hasUnfittedEvidence(learnt, fitted(0))).toBe(true);
  expect(hasUnfittedEvidence(collectEvidence(none, stock), fitted(1))).toBe(true);
});

test('a place’s name keeps its card and its number', () => {
  expect(placeOfId(placeId('card-0001', 12))).toEqual({ card: 'card-0001', number: 12 });
});

test('the colour of a sample is that of its spectrum', () => {
  const [sample] = collectEvidence(
    { ...none, curves: [entryFrom('curves', { ...bodies.curves, specular: null })] },
    stock,
  ).swatches;
  expect(sample!.lab).toEqual(labOf(spectrum<'R'>(bodies.curves.samples[0]!.reflectance)));
});
