import { chroma } from '../colour/lab.ts';
import { fail, ok } from '../result.ts';
import type { StockResult } from './edit-stock.ts';
import { masstone } from './masstone.ts';
import { curveOfEntry } from './mixing-shelf.ts';
import type { Stock } from './stock.ts';
import { labelOf } from './stock-label.ts';

/** Minimum L* and maximum C*ab of a masstone that can serve as the studio's white. */
const WHITE = { L: 85, C: 20 } as const;

/** Sets the studio's white to an entry id, or to none. */
export function markWhite(stock: Stock, id: string | null): StockResult {
  if (id === null) return ok({ ...stock, white: null });
  const entry = stock.entries.find((each) => each.id === id);
  if (entry === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const label = labelOf(stock, entry);
  const paint = curveOfEntry(stock, entry);
  if (paint === null) return fail([{ code: 'stock-white-uncurved', field: null, label }]);
  const lab = masstone(paint, stock.surface);
  if (lab[0] < WHITE.L || chroma(lab) > WHITE.C)
    return fail([{ code: 'stock-white-dark', field: null, label }]);
  return ok({ ...stock, white: id });
}
