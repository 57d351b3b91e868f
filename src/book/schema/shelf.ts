import * as v from 'valibot';
import type { Lab } from '../../colour/lab.ts';
import type { Surface } from '../../optics/surface.ts';
import { mixtureShelfOf } from '../../pigment/mixing-shelf.ts';
import type { Basis, ShelfRemark } from '../../pigment/shelf.ts';
import type { OwnPigment, Stock, StockEntry, StoredEvidence } from '../../pigment/stock.ts';
import {
  amount,
  bands,
  date,
  type FileRef,
  fileRef,
  lab,
  listField,
  longText,
  pigment,
  share,
  shortText,
} from './fields.ts';

/** Where a paint's curves come from. */
const KNOWN = ['handbook', 'photographed', 'measured'] as const;

interface StockPaint {
  readonly pigment: string;
  readonly label: string;
  readonly known: (typeof KNOWN)[number];
  /** Absorption and scattering on the wavelength grid, relative to titanium white (mean S = 1). */
  readonly K: readonly number[];
  readonly S: readonly number[];
  readonly grade: string;
  readonly lot: string;
  readonly note: string;
  /** Bought as ready paste, or as powder to grind in oil. */
  readonly form: 'paste' | 'powder';
  /** Amount left; absent when it was never weighed. */
  readonly grams?: number;
  readonly opened?: string;
}

export interface ShelfBody {
  readonly name: string;
  readonly note: string;
  readonly basis: Basis;
  readonly surface: Surface;
  readonly white: string | null;
  readonly paints: readonly StockPaint[];
  readonly remarks: readonly string[];
  /**
   * The complete stock of the studio's shelf by lot and amount, with its custom pigments. When
   * present, `paints` are what could be mixed from it at the time of writing, with their curves.
   */
  readonly stock?: Stock;
}

const MOST_REMARKS = 100;

const trust: v.GenericSchema<unknown, StoredEvidence> = v.strictObject({
  date,
  rough: v.boolean(),
  swatches: amount,
  piles: amount,
  expected: v.strictObject({ median: amount, tenth: amount }),
});
const curve = v.nullable(
  v.strictObject({
    known: v.picklist(['photographed', 'measured']),
    K: bands,
    S: bands,
    trust: v.exactOptional(trust),
  }),
);
const figures = { density: v.nullable(amount), oil: v.nullable(amount), curve, note: longText };

const stockEntry: v.GenericSchema<unknown, StockEntry> = v.strictObject({
  ...figures,
  id: pigment,
  pigment,
  grade: shortText,
  lot: shortText,
  form: v.picklist(['powder', 'paste', 'tube']),
  amount: v.nullable(amount),
  unit: v.picklist(['g', 'ml']),
});

const ownPigment: v.GenericSchema<unknown, OwnPigment> = v.strictObject({
  ...figures,
  id: pigment,
  name: shortText,
  synonyms: listField(shortText, 24),
  family: v.picklist(['white', 'yellow', 'red', 'blue', 'green', 'brown', 'black']),
  hazard: v.picklist(['low', 'caution', 'toxic', 'very_toxic']),
  caution: longText,
});

const surface = v.strictObject({
  k1: share,
  k2: share,
  specular: v.picklist(['included', 'excluded']),
});

const stock: v.GenericSchema<unknown, Stock> = v.strictObject({
  name: shortText,
  surface,
  white: v.nullable(pigment),
  entries: listField(stockEntry, 500),
  own: listField(ownPigment, 200),
});

export const shelfBody: v.GenericSchema<unknown, ShelfBody> = v.strictObject({
  name: shortText,
  note: longText,
  basis: v.picklist(['volume', 'mass', 'unknown']),
  surface,
  white: v.nullable(pigment),
  paints: listField(
    v.strictObject({
      pigment,
      label: shortText,
      known: v.picklist(KNOWN),
      K: bands,
      S: bands,
      grade: shortText,
      lot: shortText,
      note: longText,
      form: v.picklist(['paste', 'powder']),
      grams: v.exactOptional(amount),
      opened: v.exactOptional(date),
    }),
    500,
  ),
  remarks: listField(longText, MOST_REMARKS),
  stock: v.exactOptional(stock),
});

/**
 * A stock in its stored form, with the paints that can be mixed from it.
 * @param remarkWords the sentence of a remark, which is stored
 */
export function bodyOfStock(
  stock: Stock,
  remarkWords: (remark: ShelfRemark) => string,
  note = '',
): ShelfBody {
  const shelf = mixtureShelfOf(stock);
  const { name, basis, surface, white } = shelf;
  const paints = shelf.paints.map(({ pigment, label, paint }): StockPaint => {
    const entry =
      stock.entries.find(({ id, pigment: of }) => `${of}#${id}` === pigment) ??
      stock.entries.find((each) => each.pigment === pigment && each.amount !== 0)!;
    const own = stock.own.find(({ id }) => id === entry.pigment);
    return {
      pigment,
      label,
      known: (entry.curve ?? own?.curve)?.known ?? 'handbook',
      K: Array.from(paint.K),
      S: Array.from(paint.S),
      grade: entry.grade,
      lot: entry.lot,
      note: entry.note,
      form: entry.form === 'powder' ? 'powder' : 'paste',
    };
  });
  const remarks = shelf.remarks.slice(0, MOST_REMARKS).map(remarkWords);
  return { name, note, basis, surface, white, paints, remarks, stock };
}

/** A painted swatch, as evidence for a paint's curves. */
export interface SwatchBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly pigment: string;
  readonly lot: string;
  /** Parts of the pigment to one part of the studio's white; null for masstone. */
  readonly toWhite: number | null;
  /** Photographed or measured. */
  readonly lab: Lab;
  /** Measured reflectance on the wavelength grid, 0…1 or slightly above. */
  readonly reflectance?: readonly number[];
  readonly photo?: FileRef;
}

export const swatchBody: v.GenericSchema<unknown, SwatchBody> = v.strictObject({
  name: shortText,
  note: longText,
  date,
  pigment,
  lot: shortText,
  toWhite: v.nullable(amount),
  lab,
  reflectance: v.exactOptional(bands),
  photo: v.exactOptional(fileRef),
});
