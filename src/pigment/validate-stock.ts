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
const DENSITY = { least: 0.5, most: 15 } as const;
/** Plausible g of oil per 100 g of pigment; the handbook values run from 6 to 240. */
const OIL = { least: 1, most: 600 } as const;

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
  if (density !== null && !(density >= DENSITY.least && density <= DENSITY.most))
    faults.push({ code: 'stock-density', field: 'density', density });
  if (oil !== null && !(oil >= OIL.least && oil <= OIL.most))
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

/** Message for a fault, then what to do. */
export function stockFaultWords(fault: StockFault): string {
  switch (fault.code) {
    case 'stock-gone':
      return 'This is no longer on the shelf: it was taken off elsewhere.';
    case 'stock-pigment-missing':
      return 'Choose a pigment, or make one of your own first.';
    case 'stock-pigment-unknown':
      return `"${fault.pigment}" is not a pigment that this shelf knows: choose one from the list, or make it one of your own.`;
    case 'stock-amount':
      return 'The amount is a number from 0 up; leave it empty if it was not weighed.';
    case 'stock-unit':
      return fault.form === 'powder'
        ? 'Dry powder is weighed in grams: its volume depends on how it is packed.'
        : `A ${fault.form} is measured in grams or millilitres, not in "${fault.unit}".`;
    case 'stock-density':
      return `A density of ${fault.density} g/cm3 cannot be right: pigments lie between ${DENSITY.least} and ${DENSITY.most}. Leave it empty to use the handbook's.`;
    case 'stock-oil':
      return `${fault.oil} g of oil for 100 g of pigment cannot be right: pigments take from ${OIL.least} to ${OIL.most}. Leave it empty to use the handbook's.`;
    case 'stock-curve':
      return fault.row === 'K'
        ? 'Its curve is not whole: K needs a number from 0 up in each of the 36 bands. Read it in again.'
        : 'Its curve is not whole: S needs a number above 0 in each of the 36 bands. Read it in again.';
    case 'stock-long':
      return `The ${fault.field} is too long: at most ${fault.most} letters are kept.`;
    case 'stock-twice':
      return `${fault.label} is already on the shelf: change its amount there, or give this one another lot.`;
    case 'stock-white-dark':
      return `${fault.label} is too dark or too coloured to serve as the studio's white: mark another.`;
    case 'stock-white-uncurved':
      return `${fault.label} has no K and S yet, so it cannot serve as the studio's white: calibrate it first.`;
    case 'own-name-missing':
      return 'Give the pigment a name.';
    case 'own-name-taken':
      return `There is already a pigment of your own called ${fault.name}: choose another name, or change that one.`;
    case 'own-in-use':
      return `${fault.name} is still on the shelf ${fault.entries === 1 ? 'once' : `${fault.entries} times`}: take that off first.`;
  }
}
