import { pigmentOf } from './facts.ts';
import type { Stock, StockEntry } from './stock.ts';

/** What a pigment is called on this shelf: one of ours, one of the studio's own, or its bare id. */
export const nameIn = (stock: Stock, pigment: string): string =>
  pigmentOf(pigment)?.name ?? stock.own.find(({ id }) => id === pigment)?.name ?? pigment;

/** An entry in words: "Yellow ochre, fine, lot 7, powder". Tubes and pastes do not say so. */
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
