import { expect, test } from 'vitest';
import { entryHazardOf } from '../../src/pigment/entry-hazard.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import { draftOf, type Stock, type StockForm } from '../../src/pigment/stock.ts';

const stock: Stock = { name: 'test', surface: STARTER_SURFACE, white: null, entries: [], own: [] };
const caution = (pigment: string, form: StockForm) =>
  entryHazardOf(stock, { ...draftOf(pigment, form), id: 'one' });

// Common practice: what is toxic is bought as paste; its dust is the danger.
test.each(['lead_white', 'vermilion', 'orpiment'])(
  '%s is refused as dry powder alone',
  (pigment) => {
    expect(caution(pigment, 'powder').dryRefused).toBe(true);
    expect(caution(pigment, 'paste').dryRefused).toBe(false);
    expect(caution(pigment, 'tube').dryRefused).toBe(false);
    expect(caution(pigment, 'tube').level).toMatch(/toxic/);
  },
);

test('an earth may be ground, and a pigment that nobody knows wants care', () => {
  expect(caution('yellow_ochre', 'powder')).toMatchObject({ level: 'low', dryRefused: false });
  expect(caution('moonstone', 'powder')).toMatchObject({ level: 'caution', dryRefused: false });
});
