import { type HazardLevel, pigmentOf } from './facts.ts';
import type { Stock, StockEntry } from './stock.ts';

/** What to mind about an entry; dry powder of a toxic pigment is named as such. */
export interface Caution {
  readonly level: HazardLevel;
  readonly hazard: string;
  readonly caution: string;
  /** Toxic and dry: to be bought or kept as paste, never ground here. */
  readonly dryRefused: boolean;
}

export function cautionOf(stock: Stock, entry: StockEntry): Caution {
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
