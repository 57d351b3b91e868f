import * as v from 'valibot';
import type { Lab } from '../colour/lab.ts';
import type { Mixture } from '../mixture/mixture.ts';
import {
  amount,
  bands,
  date,
  id,
  lab,
  mixture,
  pigment,
  several,
  share,
  shortWords,
  words,
} from './fields.ts';

/** Id of the studio's own palette, from which every day begins: no day's palette. */
export const STUDIO_PALETTE = 'studio-palette';

/** A pile to prepare. */
export interface PileRecord {
  readonly name: string;
  readonly mixture: Mixture;
  readonly areaCm2?: number;
  readonly filmMm?: number;
  readonly coats?: number;
  readonly cm3?: number;
  /** Names it within its passage for as long as it is there. */
  readonly id?: string;
  /** "body colour", "glaze"; how it is laid. */
  readonly film?: string;
  /** Of the passage's canvas, 0…1, in place of an area. */
  readonly share?: number;
  /** Of its film: oil stirred in, cm3 to 1 cm3 of paste. */
  readonly spareOil?: number;
  /** Allowances, as shares of 1, in place of the studio's. */
  readonly tooth?: number;
  readonly waste?: number;
  /** The entry of the book that its mixture was taken from. */
  readonly from?: string;
}
/** What is found by touching a coat, and when. */
export interface FeltRecord {
  readonly date: string;
  readonly state: 'wet' | 'tacky' | 'touch-dry';
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
    /** By volume of paste; absent where an older book kept the pigments' names alone. */
    readonly parts?: readonly { readonly pigment: string; readonly parts: number }[];
    readonly felt?: FeltRecord;
  }[];
  readonly canvas?: { readonly widthCm: number; readonly heightCm: number };
}
/** What the studio has settled once for all its palettes. */
export interface StudioRules {
  readonly tooth: number;
  readonly waste: number;
  readonly heapCm3: number;
  readonly edgeCm3: number;
  readonly oil: 'linseed' | 'walnut';
  /** Pupils under age or pregnant people are here. */
  readonly pupils: boolean;
  readonly people: readonly string[];
  readonly acknowledged: readonly {
    readonly pigment: string;
    readonly lot: string;
    readonly person: string;
    readonly date: string;
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
  /** Ids of mixed piles in an order set by hand. */
  readonly order?: readonly string[];
  /** On the studio's own palette alone, from which every day begins. */
  readonly rules?: StudioRules;
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
  /** What has left which entry of the stock, in its own unit: what undo puts back. */
  readonly taken?: readonly { readonly entry: string; readonly amount: number }[];
}
/** A pile as it came out: what predictions are judged by. */
export interface PileBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly mixture: Mixture;
  readonly lots: readonly {
    readonly pigment: string;
    readonly lot: string;
    /** Id of the shelf's entry that it was taken from. */
    readonly entry?: string;
  }[];
  /** As it looked, and how that is known. */
  readonly seen: Lab;
  readonly known: 'photographed' | 'measured' | 'by eye';
  /** Measured, on the grid, 0…1 and a little above; as the shelf's surface is seen. */
  readonly reflectance?: readonly number[];
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
  /** It has a skin: it is discarded, not stirred in. */
  readonly skinned?: boolean;
}

const named = { name: shortWords, note: words };
const pile: v.GenericSchema<unknown, PileRecord> = v.strictObject({
  name: shortWords,
  mixture,
  areaCm2: v.exactOptional(amount),
  filmMm: v.exactOptional(amount),
  coats: v.exactOptional(amount),
  cm3: v.exactOptional(amount),
  id: v.exactOptional(shortWords),
  film: v.exactOptional(shortWords),
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
      parts: v.exactOptional(several(part, 24)),
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
  people: several(shortWords, 12),
  acknowledged: several(
    v.strictObject({ pigment, lot: shortWords, person: shortWords, date }),
    1000,
  ),
});

export const paletteBody: v.GenericSchema<unknown, PaletteBody> = v.strictObject({
  ...named,
  date,
  shape: v.picklist(['oval', 'square-cornered']),
  hand: v.picklist(['right', 'left']),
  seats: several(pigment, 500),
  passages: several(id, 60),
  piles: several(pile, 60),
  order: v.exactOptional(several(shortWords, 200)),
  rules: v.exactOptional(rules),
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
  taken: v.exactOptional(several(v.strictObject({ entry: pigment, amount }), 500)),
});

export const pileBody: v.GenericSchema<unknown, PileBody> = v.strictObject({
  ...named,
  date,
  mixture,
  lots: several(v.strictObject({ pigment, lot: shortWords, entry: v.exactOptional(pigment) }), 24),
  seen: lab,
  known: v.picklist(['photographed', 'measured', 'by eye']),
  reflectance: v.exactOptional(bands),
});

export const leftoverBody: v.GenericSchema<unknown, LeftoverBody> = v.strictObject({
  ...named,
  date,
  mixture,
  cm3: amount,
  kept: shortWords,
  used: v.exactOptional(date),
  skinned: v.exactOptional(v.boolean()),
});
