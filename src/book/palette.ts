import * as v from 'valibot';
import type { Lab } from '../colour/lab.ts';
import type { Mixture } from '../mixture/mixture.ts';
import { amount, date, id, lab, mixture, pigment, several, shortWords, words } from './fields.ts';

/** A pile to prepare. */
export interface PileRecord {
  readonly name: string;
  readonly mixture: Mixture;
  readonly areaCm2?: number;
  readonly filmMm?: number;
  readonly coats?: number;
  readonly cm3?: number;
}
/** A part of the painting, with the piles it needs and the coats it has had. */
export interface PassageBody {
  readonly name: string;
  readonly note: string;
  readonly painting: string;
  /** The drapery, harmony or formula that its piles come from. */
  readonly from: string | null;
  readonly piles: readonly PileRecord[];
  readonly coats: readonly {
    readonly date: string;
    readonly film: string;
    readonly filmMm?: number;
    readonly pigments: readonly string[];
    /** Oil beyond what the pastes need, 0…1 of their volume. */
    readonly extraOil?: number;
  }[];
}
/** What lies on one palette, in seat order. */
export interface PaletteBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly shape: 'oval' | 'square-cornered';
  readonly hand: 'right' | 'left';
  readonly seats: readonly string[];
  readonly passages: readonly string[];
  readonly piles: readonly PileRecord[];
}
/** One morning's sheet, as it was printed. */
export interface SheetBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly palettes: readonly string[];
  readonly amounts: readonly {
    readonly pigment: string;
    readonly lot: string;
    readonly grams?: number;
    readonly cm3?: number;
  }[];
  /** When the amounts left the stock; absent while they have not. */
  readonly prepared?: string;
}
/** A pile as it came out: what predictions are judged by. */
export interface PileBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly mixture: Mixture;
  readonly lots: readonly { readonly pigment: string; readonly lot: string }[];
  /** As it looked, and how that is known. */
  readonly seen: Lab;
  readonly known: 'photographed' | 'measured' | 'by eye';
}
/** What is left of a pile at the day's end. */
export interface LeftoverBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly mixture: Mixture;
  readonly cm3: number;
  /** "under water", "under film", "open". */
  readonly kept: string;
  /** ISO day; absent while it can be used. */
  readonly used?: string;
}

const named = { name: shortWords, note: words };
const pile: v.GenericSchema<unknown, PileRecord> = v.strictObject({
  name: shortWords,
  mixture,
  areaCm2: v.exactOptional(amount),
  filmMm: v.exactOptional(amount),
  coats: v.exactOptional(amount),
  cm3: v.exactOptional(amount),
});

export const passageBody: v.GenericSchema<unknown, PassageBody> = v.strictObject({
  ...named,
  painting: shortWords,
  from: v.nullable(id),
  piles: several(pile, 60),
  coats: several(
    v.strictObject({
      date,
      film: shortWords,
      filmMm: v.exactOptional(amount),
      pigments: several(pigment, 24),
      extraOil: v.exactOptional(amount),
    }),
    200,
  ),
});

export const paletteBody: v.GenericSchema<unknown, PaletteBody> = v.strictObject({
  ...named,
  date,
  shape: v.picklist(['oval', 'square-cornered']),
  hand: v.picklist(['right', 'left']),
  seats: several(pigment, 60),
  passages: several(id, 60),
  piles: several(pile, 60),
});

export const sheetBody: v.GenericSchema<unknown, SheetBody> = v.strictObject({
  ...named,
  date,
  palettes: several(id, 12),
  amounts: several(
    v.strictObject({
      pigment,
      lot: shortWords,
      grams: v.exactOptional(amount),
      cm3: v.exactOptional(amount),
    }),
    200,
  ),
  prepared: v.exactOptional(date),
});

export const pileBody: v.GenericSchema<unknown, PileBody> = v.strictObject({
  ...named,
  date,
  mixture,
  lots: several(v.strictObject({ pigment, lot: shortWords }), 24),
  seen: lab,
  known: v.picklist(['photographed', 'measured', 'by eye']),
});

export const leftoverBody: v.GenericSchema<unknown, LeftoverBody> = v.strictObject({
  ...named,
  date,
  mixture,
  cm3: amount,
  kept: shortWords,
  used: v.exactOptional(date),
});
