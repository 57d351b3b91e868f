import { shelfRemarkWords } from '../../messages/shelf-file-faults.ts';
import type { SpectraRemark } from '../../pigment/import/cgats.ts';
import { masstonesOf } from '../../pigment/nearest-masstone.ts';
import type { Shelf, ShelfRemark } from '../../pigment/shelf.ts';
import { midSentence } from '../../wording.ts';
import { formatNumber } from './locale-format.ts';
import { cssColourOf } from './screen-colour.ts';

/** Label of a pigment on a shelf; its id if the shelf lacks it. */
export const shelfLabelOf = (pigment: string, shelf: Shelf): string =>
  shelf.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;

/** Label as written within a sentence. */
export const sentenceLabelOf = (pigment: string, shelf: Shelf): string =>
  midSentence(shelfLabelOf(pigment, shelf));

/** Display colour of its masstone; #808080 if the shelf lacks it. */
export function masstoneDisplayColour(pigment: string, shelf: Shelf): string {
  const found = masstonesOf(shelf).find((paint) => paint.pigment === pigment);
  return found ? cssColourOf(found.lab) : '#808080';
}

/** The sentence for an assumption about a shelf or a file of spectra. */
export const shelfRemark = (remark: ShelfRemark | SpectraRemark): string =>
  shelfRemarkWords(remark, formatNumber);
