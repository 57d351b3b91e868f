import { pigmentOf } from './pigment-facts.ts';
import type { Stock, StockEntry } from './stock.ts';

/** Display name of a pigment id: from our facts, else the studio's own pigment, else the id. */
export const nameIn = (stock: Stock, pigment: string): string =>
  pigmentOf(pigment)?.name ?? stock.own.find(({ id }) => id === pigment)?.name ?? pigment;

/** Label of an entry: "Yellow ochre, fine, lot 7, powder". Tubes and pastes name no form. */
export function labelOf(stock: Stock, entry: StockEntry): string {
  const { pigment, grade, lot, form } = entry;
  return [
    nameIn(stock, pigment),
    grade,
    lot === '' ? '' : /^lot\b/i.test(lot) ? lot : `lot ${lot}`,
    form === 'powder' ? 'powder' : '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}
