import { BANDS } from '../colour/grid.ts';
import { pigmentOf } from './pigment-facts.ts';
import { type OwnPigment, type Stock, type StockEntry, type StoredCurve, UNITS } from './stock.ts';
import { labelOf } from './stock-label.ts';

/** The form field that a fault belongs to; null for the entry as a whole. */
export type StockField =
  | 'pigment'
  | 'grade'
  | 'lot'
  | 'amount'
  | 'unit'
  | 'density'
  | 'oil'
  | 'curve'
  | 'note'
  | 'name'
  | null;

export type StockFault =
  | { readonly code: 'stock-gone'; readonly field: null }
  | { readonly code: 'stock-pigment-missing'; readonly field: 'pigment' }
  | { readonly code: 'stock-pigment-unknown'; readonly field: 'pigment'; readonly pigment: string }
  | { readonly code: 'stock-amount'; readonly field: 'amount'; readonly amount: number }
  | {
      readonly code: 'stock-unit';
      readonly field: 'unit';
      readonly form: string;
      readonly unit: string;
    }
  | { readonly code: 'stock-density'; readonly field: 'density'; readonly density: number }
  | { readonly code: 'stock-oil'; readonly field: 'oil'; readonly oil: number }
  | { readonly code: 'stock-curve'; readonly field: 'curve'; readonly row: 'K' | 'S' }
  | {
      readonly code: 'stock-long';
      readonly field: 'grade' | 'lot' | 'note' | 'name';
      readonly most: number;
    }
  | { readonly code: 'stock-twice'; readonly field: 'lot'; readonly label: string }
  | { readonly code: 'stock-white-dark'; readonly field: null; readonly label: string }
  | { readonly code: 'stock-white-uncurved'; readonly field: null; readonly label: string }
  | { readonly code: 'own-name-missing'; readonly field: 'name' }
  | { readonly code: 'own-name-taken'; readonly field: 'name'; readonly name: string }
  | {
      readonly code: 'own-in-use';
      readonly field: 'pigment';
      readonly name: string;
      readonly entries: number;
    };

/** Maximum lengths in characters. */
const MAX_LENGTHS = { grade: 80, lot: 80, name: 80, note: 2000 } as const;
/** In g or ml: a tonne, more than any studio has. */
const MOST_AMOUNT = 1_000_000;
/** Plausible g/cm3; the handbook values run from 1.35 (light lakes) to 9.6 (lead). */
export const PLAUSIBLE_DENSITY = { least: 0.5, most: 15 } as const;
/** Plausible g of oil per 100 g of pigment; the handbook values run from 6 to 240. */
export const PLAUSIBLE_OIL = { least: 1, most: 600 } as const;

/** All faults of an entry, including a duplicate among the other entries of the stock. */
export function checkEntry(stock: Stock, entry: StockEntry): StockFault[] {
  const faults: StockFault[] = [];
  const { pigment, form, unit, amount } = entry;
  if (pigment === '') faults.push({ code: 'stock-pigment-missing', field: 'pigment' });
  else if (pigmentOf(pigment) === null && !stock.own.some(({ id }) => id === pigment))
    faults.push({ code: 'stock-pigment-unknown', field: 'pigment', pigment });
  if (amount !== null && !(amount >= 0 && amount <= MOST_AMOUNT))
    faults.push({ code: 'stock-amount', field: 'amount', amount });
  if (!(UNITS[form] as readonly string[]).includes(unit))
    faults.push({ code: 'stock-unit', field: 'unit', form, unit });
  faults.push(...checkFigures(entry), ...tooLong(entry, ['grade', 'lot', 'note']));
  const same = (other: StockEntry) =>
    other.id !== entry.id &&
    (['pigment', 'grade', 'lot', 'form'] as const).every((field) => other[field] === entry[field]);
  if (faults.length === 0 && stock.entries.some(same))
    faults.push({ code: 'stock-twice', field: 'lot', label: labelOf(stock, entry) });
  return faults;
}

/** All faults of an own pigment, including a duplicate name. */
export function checkOwn(stock: Stock, own: OwnPigment): StockFault[] {
  const faults: StockFault[] = [];
  const taken = stock.own.some(
    ({ id, name }) => id !== own.id && name.toLowerCase() === own.name.toLowerCase(),
  );
  if (own.name === '') faults.push({ code: 'own-name-missing', field: 'name' });
  else if (taken) faults.push({ code: 'own-name-taken', field: 'name', name: own.name });
  faults.push(...checkFigures(own), ...tooLong(own, ['name', 'note']));
  return faults;
}

function checkFigures(of: {
  readonly density: number | null;
  readonly oil: number | null;
  readonly curve: StoredCurve | null;
}): StockFault[] {
  const faults: StockFault[] = [];
  const { density, oil, curve } = of;
  if (
    density !== null &&
    !(density >= PLAUSIBLE_DENSITY.least && density <= PLAUSIBLE_DENSITY.most)
  )
    faults.push({ code: 'stock-density', field: 'density', density });
  if (oil !== null && !(oil >= PLAUSIBLE_OIL.least && oil <= PLAUSIBLE_OIL.most))
    faults.push({ code: 'stock-oil', field: 'oil', oil });
  if (curve !== null) {
    const whole = (values: readonly number[], fits: (value: number) => boolean) =>
      values.length === BANDS && values.every((value) => Number.isFinite(value) && fits(value));
    if (!whole(curve.K, (k) => k >= 0))
      faults.push({ code: 'stock-curve', field: 'curve', row: 'K' });
    else if (!whole(curve.S, (s) => s > 0))
      faults.push({ code: 'stock-curve', field: 'curve', row: 'S' });
  }
  return faults;
}

function tooLong<Field extends keyof typeof MAX_LENGTHS>(
  of: Readonly<Record<Field, string>>,
  fields: readonly Field[],
): StockFault[] {
  return fields
    .filter((field) => of[field].length > MAX_LENGTHS[field])
    .map((field) => ({ code: 'stock-long', field, most: MAX_LENGTHS[field] }));
}
