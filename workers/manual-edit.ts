import { type Matrix, multiplyColumn } from '../src/colour/matrix.ts';
import { labOfLinear } from '../src/colour/rgb.ts';
import type { EditedHarmony, EditFault } from '../src/harmony/manual-edits.ts';
import { addSpot, splitColourInTwo } from '../src/harmony/merge-split.ts';
import type { PhotoFault } from '../src/photo/image-file.ts';
import { type Spot, type SpotFault, sampleSpot } from '../src/photo/spot-sample.ts';
import { ok, type Result } from '../src/result.ts';
import type { JobResult } from './job-protocol.ts';
import { readPixels, sideOf } from './photo.ts';

/** A manual correction that needs the photograph's pixels. */
export interface ManualEditJob {
  readonly file: Blob;
  readonly harmony: EditedHarmony;
  /** White balance of the harmony. */
  readonly adapt?: Matrix;
  readonly act:
    | { readonly kind: 'split'; readonly index: number }
    /** Position as fractions 0…1, and the patch's side as a fraction of the shorter edge. */
    | { readonly kind: 'add'; readonly x: number; readonly y: number; readonly patch: number };
}

export type HandResult = Result<EditedHarmony, PhotoFault | SpotFault | EditFault>;

/** Splits a colour in two, or adds the colour of a spot. */
export async function editPhotoManually({
  file,
  harmony,
  adapt,
  act,
}: ManualEditJob): Promise<JobResult<HandResult>> {
  const read = await readPixels(file);
  if (!read.ok) return { value: read };
  const { pixels } = read.value;
  if (act.kind === 'split')
    return { value: splitColourInTwo(harmony, act.index, pixels, adapt ? { adapt } : {}) };
  const found = sampleSpot(pixels, act.x, act.y, sideOf(pixels, act.patch));
  if (!found.ok) return { value: found };
  // A harmony counts in the photograph's pixels; the book's copy may be smaller.
  const { width, height } = pixels;
  const added = addSpot({ ...harmony, width, height }, found.value, seen(found.value, adapt));
  if (!added.ok) return { value: added };
  return { value: ok({ ...added.value, width: harmony.width, height: harmony.height }) };
}

/** A spot's colour after white balance. */
function seen({ linear, lab }: Spot, adapt: Matrix | undefined) {
  return adapt ? labOfLinear(...multiplyColumn(adapt, ...linear)) : lab;
}
