import type { Surface } from '../optics/surface.ts';
import { fail, ok, type Result } from '../result.ts';
import {
  type Draft,
  OWN,
  type OwnPigment,
  type Stock,
  type StockEntry,
  UNITS,
  type Unit,
} from './stock.ts';
import { checkEntry, checkOwn, type StockFault } from './validate.ts';

/** The changed stock, or everything that is wrong; the stock that was given is never touched. */
export type StockResult = Result<Stock, readonly StockFault[]>;

/** Puts a draft on the shelf under a new id, or says everything that is wrong with it. */
export function addEntry(stock: Stock, draft: Draft, id: string): StockResult {
  if (stock.entries.some((entry) => entry.id === id)) throw new RangeError(`${id} is taken`);
  const entry = tidied({ ...draft, id });
  const faults = checkEntry(stock, entry);
  return faults.length > 0 ? fail(faults) : ok({ ...stock, entries: [...stock.entries, entry] });
}

/**
 * Changes an entry in its place, or says everything that would be wrong with it. A new form brings its
 * usual unit where none is given, and an amount in the old unit is forgotten rather than misread.
 */
export function editEntry(stock: Stock, id: string, change: Partial<Draft>): StockResult {
  const old = stock.entries.find((entry) => entry.id === id);
  if (old === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const entry = tidied({ ...old, ...inUnit(old, change), id });
  const faults = checkEntry(stock, entry);
  if (faults.length > 0) return fail(faults);
  const entries = stock.entries.map((each) => (each.id === id ? entry : each));
  return ok({ ...stock, entries });
}

/** Takes an entry off; where it was the studio's white there is none until another is marked. */
export function removeEntry(stock: Stock, id: string): StockResult {
  const entries = stock.entries.filter((entry) => entry.id !== id);
  if (entries.length === stock.entries.length) return fail([{ code: 'stock-gone', field: null }]);
  return ok({ ...stock, entries, white: stock.white === id ? null : stock.white });
}

/** A copy under a new id, behind its original, in the next lot that is free: a new tube of the same. */
export function duplicateEntry(stock: Stock, id: string, newId: string): StockResult {
  const at = stock.entries.findIndex((entry) => entry.id === id);
  const original = stock.entries[at];
  if (original === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const base = /^(.*?)\s*(\d+)?$/.exec(original.lot)!;
  let number = Number(base[2] ?? 1);
  let copy = original;
  do {
    number++;
    // A curve belongs to the lot it was measured from.
    copy = { ...original, id: newId, curve: null, lot: `${base[1]} ${number}`.trim() };
  } while (checkEntry(stock, copy).some(({ code }) => code === 'stock-twice'));
  return ok({ ...stock, entries: stock.entries.toSpliced(at + 1, 0, copy) });
}

/** How the painter means to see the paint: with what its surface mirrors, or varnished and without glare. */
export const setSpecular = (stock: Stock, specular: Surface['specular']): Stock => ({
  ...stock,
  surface: { ...stock.surface, specular },
});

/** Adds a pigment of one's own, or changes it. Its id must start with `own:`. */
export function keepOwn(stock: Stock, pigment: OwnPigment): StockResult {
  if (!pigment.id.startsWith(OWN)) throw new RangeError(`${pigment.id} does not start with ${OWN}`);
  const own = { ...pigment, name: pigment.name.trim(), caution: pigment.caution.trim() };
  const faults = checkOwn(stock, own);
  if (faults.length > 0) return fail(faults);
  const others = stock.own.filter(({ id }) => id !== own.id);
  const at = stock.own.findIndex(({ id }) => id === own.id);
  return ok({ ...stock, own: others.toSpliced(at < 0 ? others.length : at, 0, own) });
}

/** Takes a pigment of one's own away; not while something of it stands on the shelf. */
export function removeOwn(stock: Stock, id: string): StockResult {
  const pigment = stock.own.find((each) => each.id === id);
  if (pigment === undefined) return fail([{ code: 'stock-gone', field: null }]);
  const used = stock.entries.filter((entry) => entry.pigment === id).length;
  if (used > 0)
    return fail([{ code: 'own-in-use', field: 'pigment', name: pigment.name, entries: used }]);
  return ok({ ...stock, own: stock.own.filter((each) => each.id !== id) });
}

function inUnit(old: StockEntry, change: Partial<Draft>): Partial<Draft> {
  const { form, unit } = change;
  if (form === undefined || unit !== undefined) return change;
  if ((UNITS[form] as readonly Unit[]).includes(old.unit)) return change;
  return { amount: null, ...change, unit: UNITS[form][0] };
}

const tidied = (entry: StockEntry): StockEntry => ({
  ...entry,
  grade: entry.grade.trim(),
  lot: entry.lot.trim(),
  note: entry.note.trim(),
});
