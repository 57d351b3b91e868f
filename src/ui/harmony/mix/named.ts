import { masstonesOf } from '../../../pigment/near.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { midSentence } from '../../../wording.ts';
import { shownOf } from '../../drawn/screen.ts';

/** What a person reads for a pigment. */
export const labelOn = (pigment: string, shelf: Shelf): string =>
  shelf.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;

/** The same within a sentence. */
export const spokenOn = (pigment: string, shelf: Shelf): string =>
  midSentence(labelOn(pigment, shelf));

/** Its colour alone, #rrggbb; a neutral grey where the shelf lacks it. */
export function hexOn(pigment: string, shelf: Shelf): string {
  const found = masstonesOf(shelf).find((paint) => paint.pigment === pigment);
  return found ? shownOf(found.lab) : '#808080';
}
