import { readNumber } from '../../../pigment/import/parse-number.ts';
import type { HazardLevel, PigmentFamily } from '../../../pigment/pigment-facts.ts';
import {
  OWN_ID_PREFIX,
  type OwnPigment,
  type Stock,
  type StockEntry,
  type StockForm,
  type StoredCurve,
  type Unit,
} from '../../../pigment/stock.ts';
import { newId } from '../../state/new-id.ts';
import type { PaintFormValues } from './stock-state.ts';

/** Value of the pigment field for a new custom pigment. */
export const NEW_OWN = `${OWN_ID_PREFIX}new`;

/**
 * Value of a number field: null when empty; NaN when it is not a number, which the shelf rejects
 * with a message.
 */
const figure = (text: string): number | null =>
  text.trim() === '' ? null : (readNumber(text) ?? Number.NaN);

/** Reads the values of the paint form. */
export function readPaintForm(
  form: HTMLFormElement,
  stock: Stock,
  before: StockEntry | null,
  curves: { readonly lot: StoredCurve | null; readonly own: StoredCurve | null },
): PaintFormValues {
  const data = new FormData(form);
  const text = (name: string): string => String(data.get(name) ?? '');
  const chosen = text('pigment');
  const own = chosen.startsWith(OWN_ID_PREFIX) ? ownIn(text, stock, chosen, curves.own) : null;
  const kind = text('form') as StockForm;
  return {
    own,
    draft: {
      pigment: own?.id ?? chosen,
      grade: text('grade'),
      lot: text('lot'),
      form: kind,
      amount: figure(text('amount')),
      unit: (kind === 'powder' ? 'g' : text('unit')) as Unit,
      density: figure(text('density')),
      oil: figure(text('oil')),
      curve: own && before?.pigment !== own.id ? null : curves.lot,
      note: text('note'),
    },
  };
}

function ownIn(
  text: (name: string) => string,
  stock: Stock,
  chosen: string,
  curve: StoredCurve | null,
): OwnPigment {
  const before = stock.own.find(({ id }) => id === chosen);
  return {
    id: before?.id ?? `${OWN_ID_PREFIX}${newId()}`,
    name: text('name'),
    synonyms: before?.synonyms ?? [],
    family: text('family') as PigmentFamily,
    hazard: text('hazard') as HazardLevel,
    caution: text('caution'),
    density: before?.density ?? null,
    oil: before?.oil ?? null,
    curve,
    note: before?.note ?? '',
  };
}
