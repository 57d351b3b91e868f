import * as v from 'valibot';
import type { Part } from '../../calibration/painted-swatch.ts';
import type { SwatchCard } from '../../calibration/swatch-card.ts';
import type { Lab } from '../../colour/lab.ts';
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
  shortText,
} from './fields.ts';

/** Lot of a paint when it was brushed out; `pigment` is the id of its entry on the shelf. */
export interface LotUsed {
  readonly pigment: string;
  readonly lot: string;
}

/** One printed page of swatches, and the reading of its photograph. */
export interface CardBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  /** Its numbered places; their pigments are ids of entries on the shelf. */
  readonly plan: SwatchCard;
  readonly lots: readonly LotUsed[];
  /** Numbers of places that are excluded from calibration. */
  readonly leftOut: readonly number[];
  readonly reading?: CardReading;
}

/** Result of reading one photograph of a card. */
export interface CardReading {
  readonly date: string;
  /** The places were marked one by one by the painter. */
  readonly byHand: boolean;
  readonly places: readonly PlaceRead[];
  /** Estimated standard deviation of each of L*, a*, b*. */
  readonly sd: number;
  /** Illumination of the brightest place divided by that of the darkest, before correction. */
  readonly unevenness: number;
  /** CIEDE2000 between the references and their known values. */
  readonly referenceResidual: number;
  /** Mean CIEDE2000 of the patches of a colour chart after correction; null without a chart. */
  readonly chart: number | null;
  readonly remarks: readonly string[];
  readonly photo?: FileRef;
}
interface PlaceRead {
  readonly number: number;
  readonly lab: Lab;
  /**
   * Corners of the sampled area as x, y pairs, clockwise from the top left, in fractions of width
   * and height.
   */
  readonly corners: readonly number[];
}

/** A file of measured reflectances, with the paints in each sample. */
export interface CurvesBody {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  /** As stated in the file. */
  readonly geometry: string | null;
  readonly specular: 'included' | 'excluded' | null;
  readonly lots: readonly LotUsed[];
  readonly samples: readonly MeasuredSample[];
}
export interface MeasuredSample {
  readonly name: string;
  /** By volume; `pigment` is the id of an entry on the shelf. Empty when the sample is left out. */
  readonly parts: readonly Part[];
  /** On the wavelength grid, 0…1 or slightly above. */
  readonly reflectance: readonly number[];
}

const named = { name: shortText, note: longText, date };
const lots = listField(v.strictObject({ pigment, lot: shortText }), 500);
const parts = listField(v.strictObject({ pigment, parts: amount }), 24);
const millimetres = v.pipe(v.number(), v.minValue(0), v.maxValue(500));
const count = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(10_000));

const plan: v.GenericSchema<unknown, SwatchCard> = v.strictObject({
  name: v.exactOptional(shortText),
  paper: v.picklist(['A4', 'letter']),
  page: count,
  pages: count,
  white: pigment,
  places: listField(
    v.strictObject({
      number: count,
      kind: v.picklist(['paint', 'white', 'grey', 'black']),
      parts,
      label: shortText,
      measure: shortText,
      x: millimetres,
      y: millimetres,
      width: millimetres,
      height: millimetres,
    }),
    200,
  ),
  cautions: listField(longText, 200),
});

const corner = v.pipe(v.number(), v.minValue(-0.5), v.maxValue(1.5));
const reading: v.GenericSchema<unknown, CardReading> = v.strictObject({
  date,
  byHand: v.boolean(),
  places: listField(
    v.strictObject({ number: count, lab, corners: v.pipe(v.array(corner), v.length(8)) }),
    200,
  ),
  sd: amount,
  unevenness: amount,
  referenceResidual: amount,
  chart: v.nullable(amount),
  remarks: listField(longText, 100),
  photo: v.exactOptional(fileRef),
});

export const cardBody: v.GenericSchema<unknown, CardBody> = v.strictObject({
  ...named,
  plan,
  lots,
  leftOut: listField(count, 200),
  reading: v.exactOptional(reading),
});

export const curvesBody: v.GenericSchema<unknown, CurvesBody> = v.strictObject({
  ...named,
  geometry: v.nullable(shortText),
  specular: v.nullable(v.picklist(['included', 'excluded'])),
  lots,
  samples: listField(v.strictObject({ name: shortText, parts, reflectance: bands }), 2000),
});
