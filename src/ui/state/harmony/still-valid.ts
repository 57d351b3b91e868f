import { deltaE00 } from '../../../colour/difference.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import { recipeColourOf } from '../../../pigment/changed-recipes.ts';
import type { Shelf } from '../../../pigment/shelf.ts';

/** CIEDE2000: invisible, but larger than the rounding of a stored record. */
const SAME_COLOUR_DELTA_E = 0.05;

/** Whether a mixture's parts still make its stored colour; false if the shelf lacks a pigment. */
export function isValidOnShelf(on: Shelf, { parts, partsLab }: Mixture): boolean {
  const lab = recipeColourOf({ id: '', parts }, on);
  return lab !== null && deltaE00(lab, partsLab) < SAME_COLOUR_DELTA_E;
}
