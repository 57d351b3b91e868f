import { describe, expect, test } from 'vitest';
import { plainNumber } from '../../src/number-format.ts';
import {
  putBack,
  StockDrawer,
  takeFrom,
  weigh,
  withdrawalsOf,
} from '../../src/palette/stock-supply.ts';
import { pasteCm3 } from '../../src/pigment/paste-volume.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { askedOf, dice, entryOf, passageOf, pileOf, planned, STARTER, stockOf } from './made.ts';

const OCHRES = stockOf([
  entryOf('yellow_ochre', { form: 'powder', lot: '1', amount: 3, unit: 'g' }),
  entryOf('yellow_ochre', { form: 'paste', lot: '2', amount: 5, unit: 'g' }),
  entryOf('yellow_ochre', { form: 'tube', lot: '3', amount: 2, unit: 'ml' }),
]);

describe('a cupboard', () => {
  test('draws lot after lot, and says what lacks', () => {
    const held = OCHRES.entries.map((entry) => pasteCm3(OCHRES, entry)!);
    const all = held.reduce((sum, cm3) => sum + cm3, 0);
    const supply = new StockDrawer(OCHRES).draw('yellow_ochre', all + 1);
    expect(supply.draws.map(({ entry }) => entry?.lot)).toEqual(['1', '2', '3', undefined]);
    expect(supply.lackCm3).toBeCloseTo(1, 9);
    const drawn = supply.draws.reduce((sum, { cm3 }) => sum + cm3, 0);
    expect(drawn).toBeCloseTo(all + 1, 9);
  });

  test('remembers over a day what is gone', () => {
    const cupboard = new StockDrawer(stockOf([entryOf('chalk', { amount: 3, unit: 'ml' })]));
    expect(cupboard.draw('chalk', 2).lackCm3).toBe(0);
    expect(cupboard.draw('chalk', 2).lackCm3).toBeCloseTo(1, 12);
  });

  test('paint that was never weighed suffices, and is said to be uncounted', () => {
    const supply = new StockDrawer(stockOf([entryOf('chalk')])).draw('chalk', 100);
    expect(supply).toMatchObject({ lackCm3: 0, uncounted: true });
  });

  test('a lot with a paint of its own is drawn from that lot alone', () => {
    const two = stockOf([entryOf('chalk', { lot: 'a' }), entryOf('chalk', { lot: 'b' })]);
    const supply = new StockDrawer(two).draw('chalk#chalk-b-tube', 1);
    expect(supply.draws.map(({ entry }) => entry?.lot)).toEqual(['b']);
  });
});

test('a lot’s own figures are preferred, and an estimate prints “about”', () => {
  const own = entryOf('azurite', { form: 'powder', density: 3.8, oil: 22 });
  expect(weigh(null, 'azurite', own, 1)).toMatchObject({ about: false });
  const jar = entryOf('azurite', { form: 'powder' });
  expect(weigh(null, 'azurite', jar, 1)).toMatchObject({ about: true });
  const stock = stockOf([jar]);
  const studio = { shelf: STARTER.shelf, stock };
  const day = planned(askedOf([passageOf('p', [pileOf('sky', { azurite: 1 })])]), studio);
  const [row] = sheetOf(day, 0, studio, plainNumber).prepare[0]!.rows;
  expect(row).toMatchObject({ act: 'temper, do not grind' });
  expect(row!.weigh).toMatch(/^about /);
});

test('walnut oil instead of linseed changes little, and is honoured', () => {
  const jar = entryOf('lead_white', { form: 'powder' });
  const [linseed, walnut] = (['linseed', 'walnut'] as const).map((oil) =>
    weigh(null, 'lead_white', jar, 10, oil),
  );
  if (linseed!.as !== 'powder' || walnut!.as !== 'powder') throw new Error('not weighed');
  expect(walnut!.oilGrams).not.toBe(linseed!.oilGrams);
  expect(walnut!.oilGrams / linseed!.oilGrams).toBeCloseTo(1, 2);
});

describe('prepared, and undone', () => {
  const d = dice(3);
  test('what leaves the stock is what was drawn; undo gives the same stock back', () => {
    for (let n = 0; n < 100; n++) {
      const cupboard = new StockDrawer(OCHRES);
      const want = d.next() * 6;
      const supply = cupboard.draw('yellow_ochre', want);
      const { stock, taken } = takeFrom(OCHRES, withdrawalsOf([supply]));
      const held = (of: typeof OCHRES) =>
        of.entries.reduce((sum, entry) => sum + pasteCm3(of, entry)!, 0);
      expect(held(OCHRES) - held(stock)).toBeCloseTo(want - supply.lackCm3, 9);
      for (const { amount } of stock.entries) expect(amount).toBeGreaterThanOrEqual(0);
      for (const [i, { amount }] of putBack(stock, taken).entries.entries())
        expect(amount).toBeCloseTo(OCHRES.entries[i]!.amount!, 12);
    }
  });

  test('undo adds to what the stock has become since', () => {
    const { stock, taken } = takeFrom(OCHRES, [{ entry: OCHRES.entries[0]!.id, amount: 2 }]);
    const bought = {
      ...stock,
      entries: stock.entries.map((entry, i) => (i === 0 ? { ...entry, amount: 101 } : entry)),
    };
    expect(putBack(bought, taken).entries[0]!.amount).toBe(103);
  });

  test('no entry falls below 0, and what is uncounted or gone is passed over', () => {
    const stock = stockOf([entryOf('chalk', { amount: 1, unit: 'ml' }), entryOf('red_earth')]);
    const takings = ['chalk--tube', 'red_earth--tube', 'gone'].map((entry) => ({
      entry,
      amount: 5,
    }));
    const after = takeFrom(stock, takings);
    expect(after.taken).toEqual([{ entry: 'chalk--tube', amount: 1 }]);
    expect(after.stock.entries.map(({ amount }) => amount)).toEqual([0, null]);
    expect(stock.entries[0]!.amount).toBe(1);
  });
});
