import * as v from 'valibot';
import type { HarmonyMove } from '../../harmony/harmony-move.ts';
import { type EditedColour, MOST_BY_HAND } from '../../harmony/manual-edits.ts';
import {
  AMOUNTS,
  VARIANT_WAYS,
  type VariantAmount,
  type VariantWay,
} from '../../harmony/variant-target.ts';
import type { MixingPreferences } from '../../mixture/mixing-preferences.ts';
import type { Mixture, MixtureAnswer } from '../../mixture/mixture-types.ts';
import { MOST_PIGMENTS } from '../../mixture/search/compiled-shelf.ts';
import { PRESERVED_AXES } from '../../mixture/search/target-metric.ts';
import { answer, date, id, listField, longText, mixture, pigment, shortText } from './fields.ts';
import { gatheredForm, handForm } from './specimen.ts';

/** One colour of a harmony, with the variants and the mixture chosen for it. */
export interface HarmonyColour extends EditedColour {
  /** Variants applied one after the other to the colour that is mixed (within reach or as seen). */
  readonly taken?: readonly { readonly way: VariantWay; readonly amount: VariantAmount }[];
  readonly mixture?: Mixture;
  /**
   * The complete search result that the mixture was chosen from, so that alternatives need no new
   * search.
   */
  readonly answer?: MixtureAnswer;
}

export interface HarmonyBody {
  readonly name: string;
  readonly note: string;
  /** ISO date, or date and time. */
  readonly date: string;
  /** Id of the specimen that it was gathered from; null for a harmony made by hand. */
  readonly specimen: string | null;
  readonly colours: readonly HarmonyColour[];
  /**
   * True when the mixtures were found for the harmony within reach of the shelf, false for it as
   * seen.
   */
  readonly keyed: boolean;
  /**
   * The transformation that brought the whole harmony within reach; absent when mixtures were found
   * for it as seen.
   */
  readonly transposed?: HarmonyMove;
  /** Name of the shelf on which the mixtures were found. */
  readonly shelf: string;
  /** Constraints on all mixtures; absent when there are none. */
  readonly wish?: MixingPreferences;
}

const factor = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const move: v.GenericSchema<unknown, HarmonyMove> = v.strictObject({
  lightness: factor,
  shift: v.pipe(v.number(), v.minValue(-100), v.maxValue(100)),
  chroma: factor,
  turnDeg: v.pipe(v.number(), v.minValue(-180), v.maxValue(180)),
});

const names = listField(pigment, 500);
const wish: v.GenericSchema<unknown, MixingPreferences> = v.strictObject({
  only: v.nullable(names),
  leaveOut: names,
  hazard: v.nullable(v.picklist(['caution', 'toxic', 'very_toxic'])),
  mustHold: names,
  noBlack: v.boolean(),
  most: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_PIGMENTS)),
  coarse: v.boolean(),
  keep: v.picklist(PRESERVED_AXES),
});

const harmonyColour: v.GenericSchema<unknown, HarmonyColour> = v.strictObject({
  ...gatheredForm,
  ...handForm,
  taken: v.exactOptional(
    v.pipe(
      v.array(v.strictObject({ way: v.picklist(VARIANT_WAYS), amount: v.picklist(AMOUNTS) })),
      v.maxLength(100),
    ),
  ),
  mixture: v.exactOptional(mixture),
  answer: v.exactOptional(answer),
});

export const harmonyBody: v.GenericSchema<unknown, HarmonyBody> = v.strictObject({
  name: shortText,
  note: longText,
  date,
  specimen: v.nullable(id),
  colours: v.pipe(v.array(harmonyColour), v.minLength(1), v.maxLength(MOST_BY_HAND)),
  keyed: v.boolean(),
  transposed: v.exactOptional(move),
  shelf: shortText,
  wish: v.exactOptional(wish),
});
