import type { Surface } from '../optics/surface.ts';
import { fail, ok, type Result } from '../result.ts';
import {
  OWN_ID_PREFIX,
  type OwnPigment,
  type Stock,
  type StockDraft,
  type StockEntry,
  UNITS,
  type Unit,
} from './stock.ts';
import { checkEntry, checkOwn, type StockFault } from './validate-stock.ts';

/** The changed stock, or all validation faults. The stock passed in is never modified. */
export type StockResult = Result<Stock, readonly StockFault[]>;

/** Adds a draft under a new id. @throws RangeError when the id is taken */
export function addEntry(stock: Stock, draft: StockDraft, id: string): StockResult {
  if (stock.entries.some((entry) => entry.id === id)) throw new RangeError(`${id} is taken`);
  const entry = trimEntry({ ...draft, id });
  const faults = checkEntry(stock, entry);
  return faults.length > 0 ? fail(faults) : ok({ ...stock, entries: [...stock.entries, entry] });
}

/**
 * Changes fields of an entry. A new form without a unit sets the form's usual unit if the old one
 * does not fit it, and then clears the amount rather than misread it.
 */
export function editEntry(stock: Stock, id: string, change: Partial<StockDraft>): StockResult {
  const old = stock.entries.find((entry) => entry.id === id);
  if (old === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const entry = trimEntry({ ...old, ...inUnit(old, change), id });
  const faults = checkEntry(stock, entry);
  if (faults.length > 0) return fail(faults);
  const entries = stock.entries.map((each) => (each.id === id ? entry : each));
  return ok({ ...stock, entries });
}

/** Removes an entry. If it was the studio's white, the stock has no white afterwards. */
export function removeEntry(stock: Stock, id: string): StockResult {
  const entries = stock.entries.filter((entry) => entry.id !== id);
  if (entries.length === stock.entries.length) return fail([{ code: 'stock-gone', field: null }]);
  return ok({ ...stock, entries, white: stock.white === id ? null : stock.white });
}

/**
 * Inserts a copy with a new id and the next free lot number after the original: a new tube of it.
 */
export function duplicateEntry(stock: Stock, id: string, newId: string): StockResult {
  const at = stock.entries.findIndex((entry) => entry.id === id);
  const original = stock.entries[at];
  if (original === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const base = /^(.*?)\s*(\d+)?$/.exec(original.lot)!;
  let number = Number(base[2] ?? 1);
  let copy = original;
  do {
    number++;
    // A curve is valid only for the lot it was measured from.
    copy = { ...original, id: newId, curve: null, lot: `${base[1]} ${number}`.trim() };
  } while (checkEntry(stock, copy).some(({ code }) => code === 'stock-twice'));
  return ok({ ...stock, entries: stock.entries.toSpliced(at + 1, 0, copy) });
}

/** Sets whether colours include the specular reflection or are seen varnished and without glare. */
export const setSpecular = (stock: Stock, specular: Surface['specular']): Stock => ({
  ...stock,
  surface: { ...stock.surface, specular },
});

/** Adds or changes an own pigment. @throws RangeError when its id does not start with `own:` */
export function saveOwnPigment(stock: Stock, pigment: OwnPigment): StockResult {
  if (!pigment.id.startsWith(OWN_ID_PREFIX))
    throw new RangeError(`${pigment.id} does not start with ${OWN_ID_PREFIX}`);
  const own = { ...pigment, name: pigment.name.trim(), caution: pigment.caution.trim() };
  const faults = checkOwn(stock, own);
  if (faults.length > 0) return fail(faults);
  const others = stock.own.filter(({ id }) => id !== own.id);
  const at = stock.own.findIndex(({ id }) => id === own.id);
  return ok({ ...stock, own: others.toSpliced(at < 0 ? others.length : at, 0, own) });
}

/** Removes an own pigment; fails while a stock entry uses it. */
export function removeOwnPigment(stock: Stock, id: string): StockResult {
  const pigment = stock.own.find((each) => each.id === id);
  if (pigment === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const used = stock.entries.filter((entry) => entry.pigment === id).length;
  if (used > 0)
    return fail([{ code: 'own-in-use', field: 'pigment', name: pigment.name, entries: used }]);
  return ok({ ...stock, own: stock.own.filter((each) => each.id !== id) });
}

function inUnit(old: StockEntry, change: Partial<StockDraft>): Partial<StockDraft> {
  const { form, unit } = change;
  if (form === undefined || unit !== undefined) return change;
  if ((UNITS[form] as readonly Unit[]).includes(old.unit)) return change;
  return { amount: null, ...change, unit: UNITS[form][0] };
}

const trimEntry = (entry: StockEntry): StockEntry => ({
  ...entry,
  grade: entry.grade.trim(),
  lot: entry.lot.trim(),
  note: entry.note.trim(),
});
