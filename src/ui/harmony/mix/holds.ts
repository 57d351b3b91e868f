import { deltaE00 } from '../../../colour/difference.ts';
import type { Mixture } from '../../../mixture/mixture.ts';
import { colourOf } from '../../../pigment/moved.ts';
import type { Shelf } from '../../../pigment/shelf.ts';

/** CIEDE2000: invisible, but larger than the rounding of a stored record. */
const SAME = 0.05;

/** Whether a mixture's parts still make its stored colour; false if the shelf lacks a pigment. */
export function holdsOn(on: Shelf, { parts, partsLab }: Mixture): boolean {
  const lab = colourOf({ id: '', parts }, on);
  return lab !== null && deltaE00(lab, partsLab) < SAME;
}
