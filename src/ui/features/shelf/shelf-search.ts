import type { Lab } from '../../../colour/lab.ts';
import { findEntries } from '../../../pigment/find-entries.ts';
import { masstone } from '../../../pigment/masstone.ts';
import { curveOfEntry } from '../../../pigment/mixing-shelf.ts';
import {
  type PigmentFacts,
  type PigmentFamily,
  pigmentOf,
} from '../../../pigment/pigment-facts.ts';
import type { OwnPigment, Stock, StockEntry } from '../../../pigment/stock.ts';
import { nameIn } from '../../../pigment/stock-label.ts';

export type Order = 'light' | 'family' | 'name';

/** One entry of the shelf as listed. */
export interface ShelfLine {
  readonly entry: StockEntry;
  readonly name: string;
  readonly family: PigmentFamily;
  readonly facts: PigmentFacts | null;
  readonly own: OwnPigment | null;
  /** Masstone colour; null when its colour is unknown. */
  readonly lab: Lab | null;
}

export function lineOf(stock: Stock, entry: StockEntry): ShelfLine {
  const facts = pigmentOf(entry.pigment);
  const own = stock.own.find(({ id }) => id === entry.pigment) ?? null;
  const paint = curveOfEntry(stock, entry);
  return {
    entry,
    facts,
    own,
    name: nameIn(stock, entry.pigment),
    family: facts?.family ?? own?.family ?? 'brown',
    lab: paint && masstone(paint, stock.surface),
  };
}

/**
 * The entries that match a search, sorted. In the order by lightness, entries without a colour come
 * last.
 */
export function shelfLines(stock: Stock, query: string, order: Order): readonly ShelfLine[] {
  const lines = findEntries(stock, query, order === 'light' ? 'name' : order).map((entry) =>
    lineOf(stock, entry),
  );
  if (order !== 'light') return lines;
  return lines.toSorted((p, q) => (q.lab?.[0] ?? -1) - (p.lab?.[0] ?? -1));
}
