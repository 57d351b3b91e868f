import * as v from 'valibot';
import type { Lab } from '../colour/lab.ts';
import type { Card } from '../pigment/calibrate/card.ts';
import type { Part } from '../pigment/calibrate/swatches.ts';
import {
  amount,
  bands,
  date,
  type FileRef,
  fileRef,
  lab,
  pigment,
  several,
  shortWords,
  words,
} from './fields.ts';

/** Which lot a paint of the shelf was when it was brushed out; `pigment` is its entry's id. */
export interface LotUsed {
  readonly pigment: string;
  readonly lot: string;
}

/** One page of swatches as it was printed, and what its photograph showed. */
export interface CardBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  /** Its numbered places; their pigments are ids of the shelf's entries. */
  readonly plan: Card;
  readonly lots: readonly LotUsed[];
  /** Numbers of places that nothing is learnt from. */
  readonly leftOut: readonly number[];
  readonly reading?: CardReading;
}

/** What one photograph of a card showed. */
export interface CardReading {
  readonly date: string;
  /** Its places were touched one by one. */
  readonly byHand: boolean;
  readonly places: readonly PlaceRead[];
  /** Standard deviation of each of L*, a*, b* to count on. */
  readonly sd: number;
  /** The most lit place over the least, before that was set right. */
  readonly unevenness: number;
  /** CIEDE2000 of the references from what they are known to be. */
  readonly referenceResidual: number;
  /** Mean CIEDE2000 of a chart's patches after correction; null without a chart. */
  readonly chart: number | null;
  readonly remarks: readonly string[];
  readonly photo?: FileRef;
}
export interface PlaceRead {
  readonly number: number;
  readonly lab: Lab;
  /** Corners x, y of what was looked at, clockwise from the top left, as shares of width and height. */
  readonly corners: readonly number[];
}

/** A file of measured reflectances, and what each of its samples is. */
export interface CurvesBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  /** As the file states it. */
  readonly geometry: string | null;
  readonly specular: 'included' | 'excluded' | null;
  readonly lots: readonly LotUsed[];
  readonly samples: readonly MeasuredSample[];
}
export interface MeasuredSample {
  readonly name: string;
  /** By volume; `pigment` is the id of an entry of the shelf. Empty: it is left out. */
  readonly parts: readonly Part[];
  /** On the grid, 0…1 and a little above. */
  readonly reflectance: readonly number[];
}

const named = { name: shortWords, note: words, date };
const lots = several(v.strictObject({ pigment, lot: shortWords }), 500);
const parts = several(v.strictObject({ pigment, parts: amount }), 24);
const millimetres = v.pipe(v.number(), v.minValue(0), v.maxValue(500));
const count = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(10_000));

const plan: v.GenericSchema<unknown, Card> = v.strictObject({
  name: v.exactOptional(shortWords),
  paper: v.picklist(['A4', 'letter']),
  page: count,
  pages: count,
  white: pigment,
  places: several(
    v.strictObject({
      number: count,
      kind: v.picklist(['paint', 'white', 'grey', 'black']),
      parts,
      label: shortWords,
      measure: shortWords,
      x: millimetres,
      y: millimetres,
      width: millimetres,
      height: millimetres,
    }),
    200,
  ),
  cautions: several(words, 200),
});

const corner = v.pipe(v.number(), v.minValue(-0.5), v.maxValue(1.5));
const reading: v.GenericSchema<unknown, CardReading> = v.strictObject({
  date,
  byHand: v.boolean(),
  places: several(
    v.strictObject({ number: count, lab, corners: v.pipe(v.array(corner), v.length(8)) }),
    200,
  ),
  sd: amount,
  unevenness: amount,
  referenceResidual: amount,
  chart: v.nullable(amount),
  remarks: several(words, 100),
  photo: v.exactOptional(fileRef),
});

export const cardBody: v.GenericSchema<unknown, CardBody> = v.strictObject({
  ...named,
  plan,
  lots,
  leftOut: several(count, 200),
  reading: v.exactOptional(reading),
});

export const curvesBody: v.GenericSchema<unknown, CurvesBody> = v.strictObject({
  ...named,
  geometry: v.nullable(shortWords),
  specular: v.nullable(v.picklist(['included', 'excluded'])),
  lots,
  samples: several(v.strictObject({ name: shortWords, parts, reflectance: bands }), 2000),
});
