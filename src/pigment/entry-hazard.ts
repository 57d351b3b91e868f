import { type HazardLevel, pigmentOf } from './pigment-facts.ts';
import type { Stock, StockEntry } from './stock.ts';

/** Hazard of a stock entry and how to handle it. */
interface EntryHazard {
  readonly level: HazardLevel;
  readonly hazard: string;
  readonly caution: string;
  /** A toxic dry powder: buy it or keep it as paste, never grind it here. */
  readonly dryRefused: boolean;
}

/** Hazard of an entry, from our facts, else from the studio's own pigment. */
export function entryHazardOf(stock: Stock, entry: StockEntry): EntryHazard {
  const facts = pigmentOf(entry.pigment);
  const own = stock.own.find(({ id }) => id === entry.pigment);
  const level = facts?.hazard.level ?? own?.hazard ?? 'caution';
  return {
    level,
    hazard: facts?.hazard.sentence ?? 'What it can do is not on our list: read its data sheet.',
    caution: facts?.hazard.caution ?? own?.caution ?? '',
    dryRefused: entry.form === 'powder' && (level === 'toxic' || level === 'very_toxic'),
  };
}
