import { pasteCm3 } from './paste-volume.ts';
import { pigmentOf } from './pigment-facts.ts';
import type { Stock, StockEntry } from './stock.ts';
import { labelOf } from './stock-label.ts';

export type StockOrder = 'name' | 'family' | 'amount' | 'hazard';

/** Families roughly from light to dark, as piles are set along a palette's edge. */
const FAMILIES = ['white', 'yellow', 'red', 'green', 'blue', 'brown', 'black'];
const HAZARDS = ['very_toxic', 'toxic', 'caution', 'low'];

/**
 * Entries that contain every word of a query (in name, synonyms, colour-index name, family, grade,
 * lot, form or note; ignoring case and accents), sorted. An empty query matches all.
 */
export function findEntries(stock: Stock, query = '', order: StockOrder = 'family'): StockEntry[] {
  const words = plain(query)
    .split(/\s+/)
    .filter((word) => word !== '');
  return stock.entries
    .filter((entry) => {
      const text = textOf(stock, entry);
      return words.every((word) => text.includes(word));
    })
    .map((entry) => ({ entry, label: labelOf(stock, entry), rank: rankOf(stock, entry, order) }))
    .toSorted((p, q) => p.rank - q.rank || p.label.localeCompare(q.label, 'en', { numeric: true }))
    .map(({ entry }) => entry);
}

function textOf(stock: Stock, entry: StockEntry): string {
  const facts = pigmentOf(entry.pigment);
  const own = stock.own.find(({ id }) => id === entry.pigment);
  return plain(
    [
      labelOf(stock, entry),
      entry.note,
      entry.form,
      ...(facts?.synonyms ?? own?.synonyms ?? []),
      facts?.family ?? own?.family ?? '',
      facts?.colourIndex.name ?? '',
    ].join(' '),
  );
}

function rankOf(stock: Stock, entry: StockEntry, order: StockOrder): number {
  const facts = pigmentOf(entry.pigment);
  const own = stock.own.find(({ id }) => id === entry.pigment);
  switch (order) {
    case 'name':
      return 0;
    case 'family':
      return FAMILIES.indexOf(facts?.family ?? own?.family ?? '');
    case 'hazard':
      return HAZARDS.indexOf(facts?.hazard.level ?? own?.hazard ?? 'caution');
    case 'amount':
      // Smallest amount first, unknown amounts last.
      return pasteCm3(stock, entry) ?? Number.MAX_VALUE;
  }
}

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
