import * as v from 'valibot';
import { type EditedColour, MOST_BY_HAND } from '../harmony/edit.ts';
import { STEPS } from '../harmony/harmony.ts';
import { STATED_LIGHTS, type StatedLight } from '../photo/neutral.ts';
import {
  amount,
  date,
  type FileRef,
  fileRef,
  lab,
  pixels,
  share,
  shortWords,
  words,
} from './fields.ts';

/** Where the painter said "this is white or grey". */
export interface NeutralSpot {
  /** Fractions 0…1 of the photograph's width and height. */
  readonly x: number;
  readonly y: number;
  /** Fraction of the longer edge. */
  readonly radius: number;
  /** What each of linear red, green and blue was multiplied by. */
  readonly gains: readonly [red: number, green: number, blue: number];
  /** Reflectance of the grey card that it was, 0…1, where the exposure was set by it as well. */
  readonly grey?: number;
}

/** The gathered result as kept: opening a specimen shows it, nothing is computed again. */
export interface GatheredRecord {
  readonly width: number;
  readonly height: number;
  readonly colours: readonly EditedColour[];
  /** One byte a cell, the colour's index, 255 where nothing was looked at. */
  readonly labels: FileRef;
  readonly remarks: readonly string[];
}

/** One photograph and its notes. Only the photograph is needed; words can wait. */
export interface SpecimenBody {
  readonly name: string;
  readonly note: string;
  /** As the painter says it: "low sun", "overcast". */
  readonly light: string;
  /** Written by hand; never taken from the photograph. */
  readonly place: string;
  readonly walk: string;
  /** ISO day or date of the outing. */
  readonly date: string;
  readonly photo: FileRef;
  readonly neutral?: NeutralSpot;
  /** The light that the painter said it was, where that set the photograph right instead of a spot. */
  readonly stated?: StatedLight;
  /** One byte a cell: 0 where the painter rubbed it out, 1 kept, 255 where the file was transparent. */
  readonly mask?: FileRef;
  readonly gathered?: GatheredRecord;
}

const fraction = v.pipe(v.number(), v.minValue(0), v.maxValue(1));

export const gatheredForm = {
  name: shortWords,
  lab,
  share,
  accent: v.boolean(),
  ladder: v.pipe(
    v.array(v.strictObject({ step: v.picklist(STEPS), lab, share })),
    v.maxLength(STEPS.length),
  ),
};
/** What the painter's hand adds to a colour. */
export const handForm = {
  asGathered: v.exactOptional(lab),
  altered: v.exactOptional(shortWords),
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
  name: shortWords,
  note: words,
  light: shortWords,
  place: shortWords,
  walk: shortWords,
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
  stated: v.exactOptional(v.picklist(STATED_LIGHTS)),
  mask: v.exactOptional(fileRef),
  gathered: v.exactOptional(
    v.strictObject({
      width: pixels,
      height: pixels,
      colours: v.pipe(v.array(gatheredColour), v.maxLength(MOST_BY_HAND)),
      labels: fileRef,
      remarks: v.pipe(v.array(shortWords), v.maxLength(50)),
    }),
  ),
});
