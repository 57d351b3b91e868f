import * as v from 'valibot';
import type { Lab } from '../../colour/lab.ts';
import { type ClothRequest, DRAPERY_WAYS } from '../../drapery/cloth-types.ts';
import { FABRICS } from '../../drapery/fabric.ts';
import type { Mixture } from '../../mixture/mixture-types.ts';
import {
  amount,
  date,
  id,
  lab,
  listField,
  longText,
  mixture,
  pigment,
  shortText,
} from './fields.ts';

/** One step of a garment, in the order of its ladder. */
interface FoldRecord {
  /** A step of the ladder, or "reflected light" or "trim", which stand outside its order. */
  readonly step: string;
  readonly lab: Lab;
  readonly mixture?: Mixture;
}
export interface GarmentRecord {
  readonly name: string;
  /** One of `DRAPERY_WAYS`, such as "as nature had it", "shot cloth" or "underpaint and glaze". */
  readonly way: string;
  readonly stuff: string;
  readonly folds: readonly FoldRecord[];
  /**
   * The constraints that the garment was computed from, needed to continue work on it; absent in
   * older books.
   */
  readonly wish?: WishRecord;
  /** Share of the scheme, relative to the other garments. */
  readonly share?: number;
}
/** All constraints of one cloth except its name. */
type WishRecord = Omit<ClothRequest, 'name'>;
/** A scheme of garments. */
export interface DraperyBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly harmony: string | null;
  readonly garments: readonly GarmentRecord[];
}

/** One coat of a passage; layers are listed from the lowest up. */
interface LayerRecord {
  /** "imprimatura", "body colour", "glaze". */
  readonly film: string;
  readonly mixture: Mixture;
  readonly filmMm?: number;
  readonly note: string;
}
/** A named recipe for one subject, by passage. */
export interface FormulaBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly subject: string;
  /** Id of the drapery or harmony that it was made from; null when written by hand. */
  readonly from: string | null;
  readonly passages: readonly { readonly name: string; readonly layers: readonly LayerRecord[] }[];
}

const fold: v.GenericSchema<unknown, FoldRecord> = v.strictObject({
  step: shortText,
  lab,
  mixture: v.exactOptional(mixture),
});

const wish: v.GenericSchema<unknown, WishRecord> = v.strictObject({
  lab,
  way: v.picklist(DRAPERY_WAYS),
  stuff: v.picklist(FABRICS),
  even: v.exactOptional(v.boolean()),
  ladder: v.exactOptional(v.pipe(listField(lab, 6), v.length(6))),
  shadows: v.exactOptional(lab),
  glaze: v.exactOptional(pigment),
  upright: v.exactOptional(v.boolean()),
  neighbour: v.exactOptional(lab),
  declared: v.exactOptional(v.picklist(['white', 'black'])),
  insistBlack: v.exactOptional(v.boolean()),
  pigments: v.exactOptional(listField(pigment, 500)),
});

export const draperyBody: v.GenericSchema<unknown, DraperyBody> = v.strictObject({
  name: shortText,
  note: longText,
  date,
  harmony: v.nullable(id),
  garments: listField(
    v.strictObject({
      name: shortText,
      way: shortText,
      stuff: shortText,
      folds: listField(fold, 12),
      wish: v.exactOptional(wish),
      share: v.exactOptional(amount),
    }),
    12,
  ),
});

const layer: v.GenericSchema<unknown, LayerRecord> = v.strictObject({
  film: shortText,
  mixture,
  filmMm: v.exactOptional(amount),
  note: longText,
});

export const formulaBody: v.GenericSchema<unknown, FormulaBody> = v.strictObject({
  name: shortText,
  note: longText,
  date,
  subject: shortText,
  from: v.nullable(id),
  passages: listField(v.strictObject({ name: shortText, layers: listField(layer, 12) }), 40),
});
