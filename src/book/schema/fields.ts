import * as v from 'valibot';
import { BANDS } from '../../colour/grid.ts';
import type { Lab } from '../../colour/lab.ts';
import type { Mixture, MixtureAnswer } from '../../mixture/mixture-types.ts';

/** Ids of entries, devices and conflict copies. */
export const ID_FORM = /^[0-9a-z][0-9a-z-]{7,63}$/;
/** Ids of files: SHA-256, hexadecimal. */
export const FILE_FORM = /^[0-9a-f]{64}$/;

/**
 * Refers to a photograph, mask or label map in the book's file table by the SHA-256 of its bytes.
 */
export interface FileRef {
  readonly file: string;
  readonly width: number;
  readonly height: number;
  /** In bytes. */
  readonly size: number;
}

export const id = v.pipe(v.string(), v.regex(ID_FORM));
/** Long text written by the painter, such as a note. */
export const longText = v.pipe(v.string(), v.maxLength(20_000));
export const shortText = v.pipe(v.string(), v.maxLength(400));
/** ISO date, or date and time. */
export const date = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}:\d{2}(\.\d+)?Z)?$/),
);
export const amount = v.pipe(v.number(), v.finite(), v.minValue(0));
/** 0…1; the tolerance allows for rounding in sums of shares. */
export const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1 + 1e-9));
const axis = v.pipe(v.number(), v.minValue(-300), v.maxValue(300));
export const lab: v.GenericSchema<unknown, Lab> = v.strictTuple([
  v.pipe(v.number(), v.minValue(-5), v.maxValue(130)),
  axis,
  axis,
]);
export const pixels = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(65_535));
export const fileRef: v.GenericSchema<unknown, FileRef> = v.strictObject({
  file: v.pipe(v.string(), v.regex(FILE_FORM)),
  width: pixels,
  height: pixels,
  size: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

/** The name by which results refer to a pigment. */
export const pigment = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const mixtureForm = {
  recipe: v.pipe(v.array(v.strictObject({ pigment, share })), v.maxLength(12)),
  lab,
  deltaE00: amount,
  reachable: v.boolean(),
  parts: v.pipe(v.array(v.strictObject({ pigment, parts: amount })), v.maxLength(12)),
  partsLab: lab,
  partsDeltaE00: amount,
  letDown: v.exactOptional(
    v.strictObject({
      letDowns: v.pipe(
        v.array(
          v.strictObject({ pigment, white: pigment, parts: v.literal(1), whiteParts: amount }),
        ),
        v.maxLength(12),
      ),
      parts: v.pipe(
        v.array(v.strictObject({ pigment, parts: amount, letDown: v.boolean() })),
        v.maxLength(12),
      ),
      lab,
      deltaE00: amount,
    }),
  ),
};
export const mixture: v.GenericSchema<unknown, Mixture> = v.strictObject(mixtureForm);
export const answer: v.GenericSchema<unknown, MixtureAnswer> = v.strictObject({
  ...mixtureForm,
  target: lab,
  simplest: mixture,
  alternatives: v.pipe(v.array(mixture), v.maxLength(24)),
});

/** One value ≥ 0 for each band of the wavelength grid. */
export const bands: v.GenericSchema<unknown, readonly number[]> = v.pipe(
  v.array(amount),
  v.length(BANDS),
);

/** A list of at most `most` items. */
export const listField = <T>(item: v.GenericSchema<unknown, T>, most: number) =>
  v.pipe(v.array(item), v.maxLength(most));
