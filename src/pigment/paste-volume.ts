import { pasteOf, weightsOf } from './paste.ts';
import { pigmentGrind } from './pigment-grind.ts';
import type { Stock, StockEntry } from './stock.ts';

/**
 * Volume of an entry in cubic centimetres of paste; a powder counts as ground in linseed oil. Null
 * if the amount, the density or the oil absorption is unknown.
 */
export function pasteCm3(stock: Stock, entry: StockEntry): number | null {
  if (entry.amount === null) return null;
  if (entry.unit === 'ml') return entry.amount;
  const own = stock.own.find(({ id }) => id === entry.pigment);
  const grind = pigmentGrind(entry.pigment, {
    density: entry.density ?? own?.density ?? undefined,
    oil: entry.oil ?? own?.oil ?? undefined,
  });
  if (!grind.ok) return null;
  const perCm3 = weightsOf(1, grind.value);
  return entry.amount / (entry.form === 'powder' ? perCm3.pigment : pasteOf(grind.value).density);
}
