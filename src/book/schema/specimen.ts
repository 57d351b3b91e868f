import * as v from 'valibot';
import { LADDER_STEPS } from '../../harmony/harmony.ts';
import { type EditedColour, MOST_BY_HAND } from '../../harmony/manual-edits.ts';
import { NAMED_LIGHTS, type NamedLight } from '../../photo/white-balance.ts';
import {
  amount,
  date,
  type FileRef,
  fileRef,
  lab,
  longText,
  pixels,
  share,
  shortText,
} from './fields.ts';

/** The spot that the painter declared white or grey. */
export interface NeutralSpot {
  /** Centre, as fractions 0…1 of the photograph's width and height. */
  readonly x: number;
  readonly y: number;
  /** Fraction of the longer edge. */
  readonly radius: number;
  /** Factors for linear red, green and blue. */
  readonly gains: readonly [red: number, green: number, blue: number];
  /** Reflectance 0…1 of the grey card, when it also set the exposure. */
  readonly grey?: number;
}

/** The stored result of gathering; opening a specimen shows it without computing again. */
interface GatheredRecord {
  readonly width: number;
  readonly height: number;
  readonly colours: readonly EditedColour[];
  /** Label map: one byte per cell, the colour's index, or 255 where nothing was examined. */
  readonly labels: FileRef;
  readonly remarks: readonly string[];
}

/** One photograph and its notes. Only the photograph is required. */
export interface SpecimenBody {
  readonly name: string;
  readonly note: string;
  /** In the painter's words: "low sun", "overcast". */
  readonly light: string;
  /** Typed by the painter; never read from the photograph. */
  readonly place: string;
  readonly walk: string;
  /** ISO date, or date and time, of the outing. */
  readonly date: string;
  readonly photo: FileRef;
  readonly neutral?: NeutralSpot;
  /**
   * The light that the painter stated, when that corrected the photograph instead of a neutral
   * spot.
   */
  readonly stated?: NamedLight;
  /** Mask, one byte per cell: 0 rubbed out, 1 kept, 255 transparent in the file. */
  readonly mask?: FileRef;
  readonly gathered?: GatheredRecord;
}

const fraction = v.pipe(v.number(), v.minValue(0), v.maxValue(1));

export const gatheredForm = {
  name: shortText,
  lab,
  share,
  accent: v.boolean(),
  ladder: v.pipe(
    v.array(v.strictObject({ step: v.picklist(LADDER_STEPS), lab, share })),
    v.maxLength(LADDER_STEPS.length),
  ),
};
/** Fields that manual correction adds to a colour. */
export const handForm = {
  asGathered: v.exactOptional(lab),
  altered: v.exactOptional(shortText),
  spotSide: v.exactOptional(pixels),
  sheen: v.exactOptional(v.boolean()),
  named: v.exactOptional(v.boolean()),
  shaped: v.exactOptional(v.picklist(['joined', 'parted'])),
};
const gatheredColour: v.GenericSchema<unknown, EditedColour> = v.strictObject({
  ...gatheredForm,
  ...handForm,
});

export const specimenBody: v.GenericSchema<unknown, SpecimenBody> = v.strictObject({
  name: shortText,
  note: longText,
  light: shortText,
  place: shortText,
  walk: shortText,
  date,
  photo: fileRef,
  neutral: v.exactOptional(
    v.strictObject({
      x: fraction,
      y: fraction,
      radius: fraction,
      gains: v.strictTuple([amount, amount, amount]),
      grey: v.exactOptional(fraction),
    }),
  ),
  stated: v.exactOptional(v.picklist(NAMED_LIGHTS)),
  mask: v.exactOptional(fileRef),
  gathered: v.exactOptional(
    v.strictObject({
      width: pixels,
      height: pixels,
      colours: v.pipe(v.array(gatheredColour), v.maxLength(MOST_BY_HAND)),
      labels: fileRef,
      remarks: v.pipe(v.array(shortText), v.maxLength(50)),
    }),
  ),
});
