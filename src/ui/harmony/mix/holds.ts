import { deltaE00 } from '../../../colour/difference.ts';
import type { Mixture } from '../../../mixture/mixture.ts';
import { colourOf } from '../../../pigment/moved.ts';
import type { Shelf } from '../../../pigment/shelf.ts';

/** Less than any eye sees, more than numbers lose on their way through a book. */
const SAME = 0.05;

/** Whether a shelf still makes of a recipe what it made when it was found. */
export function holdsOn(on: Shelf, { parts, partsLab }: Mixture): boolean {
  const lab = colourOf({ id: '', parts }, on);
  return lab !== null && deltaE00(lab, partsLab) < SAME;
}
