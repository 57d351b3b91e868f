import { masstonesOf } from '../../../pigment/near.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { midSentence } from '../../../wording.ts';
import { shownOf } from '../../drawn/screen.ts';

/** Label of a pigment on a shelf; its id if the shelf lacks it. */
export const labelOn = (pigment: string, shelf: Shelf): string =>
  shelf.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;

/** Label as written within a sentence. */
export const spokenOn = (pigment: string, shelf: Shelf): string =>
  midSentence(labelOn(pigment, shelf));

/** Display colour of its masstone; #808080 if the shelf lacks it. */
export function hexOn(pigment: string, shelf: Shelf): string {
  const found = masstonesOf(shelf).find((paint) => paint.pigment === pigment);
  return found ? shownOf(found.lab) : '#808080';
}
