import * as v from 'valibot';
import { BANDS, spectrum } from '../colour/grid.ts';
import type { Lab } from '../colour/lab.ts';
import type { Surface } from '../optics/surface.ts';
import type { Basis, Shelf, ShelfPaint } from '../pigment/shelf.ts';
import {
  amount,
  date,
  type FileRef,
  fileRef,
  lab,
  pigment,
  several,
  share,
  shortWords,
  words,
} from './fields.ts';

/** How the curves of a paint are known. */
export const KNOWN = ['handbook', 'photographed', 'measured'] as const;

/** One paint in stock. */
export interface StockPaint {
  readonly pigment: string;
  readonly label: string;
  readonly known: (typeof KNOWN)[number];
  /** Absorption and scattering on the grid, relative to titanium white, as plain numbers. */
  readonly K: readonly number[];
  readonly S: readonly number[];
  readonly grade: string;
  readonly lot: string;
  readonly note: string;
  /** Bought as a ready paste, or as powder to be ground in oil. */
  readonly form: 'paste' | 'powder';
  /** What is left; absent where nobody weighed it. */
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
}

const band = several(amount, BANDS);
const bands: v.GenericSchema<unknown, readonly number[]> = v.pipe(band, v.length(BANDS));

export const shelfBody: v.GenericSchema<unknown, ShelfBody> = v.strictObject({
  name: shortWords,
  note: words,
  basis: v.picklist(['volume', 'mass', 'unknown']),
  surface: v.strictObject({
    k1: share,
    k2: share,
    specular: v.picklist(['included', 'excluded']),
  }),
  white: v.nullable(pigment),
  paints: several(
    v.strictObject({
      pigment,
      label: shortWords,
      known: v.picklist(KNOWN),
      K: bands,
      S: bands,
      grade: shortWords,
      lot: shortWords,
      note: words,
      form: v.picklist(['paste', 'powder']),
      grams: v.exactOptional(amount),
      opened: v.exactOptional(date),
    }),
    500,
  ),
  remarks: several(words, 100),
});

/** A shelf's paints as they are kept; what a person knows of each comes later. */
export function shelfBodyOf(shelf: Shelf, known: StockPaint['known'] = 'handbook'): ShelfBody {
  const stock = ({ pigment, label, paint }: ShelfPaint): StockPaint => ({
    pigment,
    label,
    known,
    K: Array.from(paint.K),
    S: Array.from(paint.S),
    grade: '',
    lot: '',
    note: '',
    form: 'paste',
  });
  const { name, basis, surface, white, remarks } = shelf;
  return { name, note: '', basis, surface, white, paints: shelf.paints.map(stock), remarks };
}

/** The shelf that the mixture search works with. */
export function shelfOf({ name, basis, surface, white, paints, remarks }: ShelfBody): Shelf {
  return {
    name,
    basis,
    surface,
    white,
    remarks,
    paints: paints.map(({ pigment, label, K, S }) => ({
      pigment,
      label,
      paint: { K: spectrum<'K'>(K), S: spectrum<'S'>(S) },
    })),
  };
}

/** A painted swatch from which a paint's curves are learnt. */
export interface SwatchBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly pigment: string;
  readonly lot: string;
  /** Parts of the pigment to one of the studio white; null is masstone. */
  readonly toWhite: number | null;
  /** As photographed or measured. */
  readonly lab: Lab;
  /** Measured reflectance on the grid, 0…1 and a little above. */
  readonly reflectance?: readonly number[];
  readonly photo?: FileRef;
}

export const swatchBody: v.GenericSchema<unknown, SwatchBody> = v.strictObject({
  name: shortWords,
  note: words,
  date,
  pigment,
  lot: shortWords,
  toWhite: v.nullable(amount),
  lab,
  reflectance: v.exactOptional(bands),
  photo: v.exactOptional(fileRef),
});
