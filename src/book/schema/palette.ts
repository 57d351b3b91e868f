import * as v from 'valibot';
import type { Lab } from '../../colour/lab.ts';
import type { Mixture } from '../../mixture/mixture-types.ts';
import {
  amount,
  bands,
  date,
  id,
  lab,
  listField,
  longText,
  mixture,
  pigment,
  share,
  shortText,
} from './fields.ts';

/** Id of the studio's own palette, the template for each day's palette. */
export const STUDIO_PALETTE = 'studio-palette';

/** A pile to prepare. */
export interface PileRecord {
  readonly name: string;
  readonly mixture: Mixture;
  readonly areaCm2?: number;
  readonly filmMm?: number;
  readonly coats?: number;
  readonly cm3?: number;
  /** Identifies the pile within its passage. */
  readonly id?: string;
  /** How it is laid: "body colour", "glaze". */
  readonly film?: string;
  /** Share of the passage's canvas, 0…1, instead of an area. */
  readonly share?: number;
  /** Oil stirred into the film beyond the paste's own, cm³ per cm³ of paste. */
  readonly spareOil?: number;
  /** Allowances as fractions, instead of the studio's. */
  readonly tooth?: number;
  readonly waste?: number;
  /** Id of the entry that the mixture was taken from. */
  readonly from?: string;
}
/** State of a coat when touched, and the date. */
interface FeltRecord {
  readonly date: string;
  readonly state: 'wet' | 'tacky' | 'touch-dry';
}
/** A part of the painting, with the piles that it needs and the coats that were laid. */
export interface PassageBody {
  readonly name: string;
  readonly note: string;
  readonly painting: string;
  /** Id of the drapery, harmony or formula that its piles come from. */
  readonly from: string | null;
  readonly piles: readonly PileRecord[];
  readonly coats: readonly {
    readonly date: string;
    readonly film: string;
    readonly filmMm?: number;
    readonly pigments: readonly string[];
    /** Oil beyond the paste's own, 0…1 of the paste's volume. */
    readonly extraOil?: number;
    /** By volume of paste; absent in older books, which stored only the pigments' names. */
    readonly parts?: readonly { readonly pigment: string; readonly parts: number }[];
    readonly felt?: FeltRecord;
  }[];
  readonly canvas?: { readonly widthCm: number; readonly heightCm: number };
}
/** Settings of the studio that apply to all palettes. */
export interface StudioRules {
  readonly tooth: number;
  readonly waste: number;
  readonly heapCm3: number;
  readonly edgeCm3: number;
  readonly oil: 'linseed' | 'walnut';
  /** Minors or pregnant people work here. */
  readonly pupils: boolean;
  readonly people: readonly string[];
  readonly acknowledged: readonly {
    readonly pigment: string;
    readonly lot: string;
    readonly person: string;
    readonly date: string;
  }[];
}
/** The paints and piles on one palette, in the order of its seats. */
export interface PaletteBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly shape: 'oval' | 'square-cornered';
  readonly hand: 'right' | 'left';
  readonly seats: readonly string[];
  readonly passages: readonly string[];
  readonly piles: readonly PileRecord[];
  /** Ids of mixed piles in an order set manually. */
  readonly order?: readonly string[];
  /** Present only on the studio's own palette ({@link STUDIO_PALETTE}). */
  readonly rules?: StudioRules;
}
/** One morning's sheet, as printed. */
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
  /** ISO date when the amounts were subtracted from the stock; absent before that. */
  readonly prepared?: string;
  /** Amount subtracted from each stock entry, in that entry's unit, so that undo can restore it. */
  readonly taken?: readonly { readonly entry: string; readonly amount: number }[];
}
/** A pile as it came out, to compare with its prediction. */
export interface PileBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly mixture: Mixture;
  readonly lots: readonly {
    readonly pigment: string;
    readonly lot: string;
    /** Id of the entry of the shelf that it was taken from. */
    readonly entry?: string;
  }[];
  /** The observed colour; `known` says how it was obtained. */
  readonly seen: Lab;
  readonly known: 'photographed' | 'measured' | 'by eye';
  /**
   * Measured reflectance on the wavelength grid, 0…1 or slightly above; under the shelf's surface.
   */
  readonly reflectance?: readonly number[];
}
/** What is left of a pile at the end of the day. */
export interface LeftoverBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly mixture: Mixture;
  readonly cm3: number;
  /** How it is stored: "under water", "under film", "open". */
  readonly kept: string;
  /** ISO date on which it was used up; absent while it is usable. */
  readonly used?: string;
  /** It has formed a skin, so it is discarded. */
  readonly skinned?: boolean;
}

const named = { name: shortText, note: longText };
const pile: v.GenericSchema<unknown, PileRecord> = v.strictObject({
  name: shortText,
  mixture,
  areaCm2: v.exactOptional(amount),
  filmMm: v.exactOptional(amount),
  coats: v.exactOptional(amount),
  cm3: v.exactOptional(amount),
  id: v.exactOptional(shortText),
  film: v.exactOptional(shortText),
  share: v.exactOptional(share),
  spareOil: v.exactOptional(amount),
  tooth: v.exactOptional(amount),
  waste: v.exactOptional(amount),
  from: v.exactOptional(id),
});
const felt = v.strictObject({ date, state: v.picklist(['wet', 'tacky', 'touch-dry']) });
const part = v.strictObject({ pigment, parts: amount });

export const passageBody: v.GenericSchema<unknown, PassageBody> = v.strictObject({
  ...named,
  painting: shortText,
  from: v.nullable(id),
  piles: listField(pile, 60),
  coats: listField(
    v.strictObject({
      date,
      film: shortText,
      filmMm: v.exactOptional(amount),
      pigments: listField(pigment, 24),
      extraOil: v.exactOptional(amount),
      parts: v.exactOptional(listField(part, 24)),
      felt: v.exactOptional(felt),
    }),
    200,
  ),
  canvas: v.exactOptional(v.strictObject({ widthCm: amount, heightCm: amount })),
});

const rules = v.strictObject({
  tooth: amount,
  waste: amount,
  heapCm3: amount,
  edgeCm3: amount,
  oil: v.picklist(['linseed', 'walnut']),
  pupils: v.boolean(),
  people: listField(shortText, 12),
  acknowledged: listField(
    v.strictObject({ pigment, lot: shortText, person: shortText, date }),
    1000,
  ),
});

export const paletteBody: v.GenericSchema<unknown, PaletteBody> = v.strictObject({
  ...named,
  date,
  shape: v.picklist(['oval', 'square-cornered']),
  hand: v.picklist(['right', 'left']),
  seats: listField(pigment, 500),
  passages: listField(id, 60),
  piles: listField(pile, 60),
  order: v.exactOptional(listField(shortText, 200)),
  rules: v.exactOptional(rules),
});

export const sheetBody: v.GenericSchema<unknown, SheetBody> = v.strictObject({
  ...named,
  date,
  palettes: listField(id, 12),
  amounts: listField(
    v.strictObject({
      pigment,
      lot: shortText,
      grams: v.exactOptional(amount),
      cm3: v.exactOptional(amount),
    }),
    200,
  ),
  prepared: v.exactOptional(date),
  taken: v.exactOptional(listField(v.strictObject({ entry: pigment, amount }), 500)),
});

export const pileBody: v.GenericSchema<unknown, PileBody> = v.strictObject({
  ...named,
  date,
  mixture,
  lots: listField(v.strictObject({ pigment, lot: shortText, entry: v.exactOptional(pigment) }), 24),
  seen: lab,
  known: v.picklist(['photographed', 'measured', 'by eye']),
  reflectance: v.exactOptional(bands),
});

export const leftoverBody: v.GenericSchema<unknown, LeftoverBody> = v.strictObject({
  ...named,
  date,
  mixture,
  cm3: amount,
  kept: shortText,
  used: v.exactOptional(date),
  skinned: v.exactOptional(v.boolean()),
});
