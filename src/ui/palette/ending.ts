import type { LeftoverBody } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import { leftoverFromPile, type StorageWay } from '../../palette/leftover.ts';
import type { PilePlan } from '../../palette/plan.ts';
import { layerOfPile } from '../../palette/source.ts';
import { showNotice } from '../studio.ts';
import { paletteTexts } from '../words/palette.ts';
import { passageById, plannedDate } from './days.ts';
import { coatFromLayer, leftoverBodyOf } from './kept.ts';
import { changePassage, newId } from './passages.ts';
import { saveDayEntry } from './save.ts';

/**
 * Saves the rest of a pile at the end of the day as a leftover.
 *
 * @param kept its volume in cm³, and how it is stored
 */
export const saveLeftover = (
  { pile, lab }: PilePlan,
  kept: { readonly cm3: number; readonly kept: StorageWay },
) => {
  const left = leftoverFromPile(
    { name: pile.name, parts: pile.parts, letDowns: pile.letDowns, lab },
    { ...kept, id: newId(), date: plannedDate.value },
  );
  return saveDayEntry(
    { kind: 'leftover', id: left.id, body: leftoverBodyOf(left) },
    paletteTexts.noted(pile.name),
  );
};

export const changeLeftover = (
  over: Entry<'leftover'>,
  change: Partial<LeftoverBody>,
  said: string,
) => saveDayEntry({ kind: 'leftover', id: over.id, over, body: { ...over.body, ...change } }, said);

/** Records that a pile was laid: adds it to the coats of its passage. */
export async function recordCoat(planned: PilePlan): Promise<void> {
  const over = passageById(planned.passage.id);
  if (!over) return;
  const coat = coatFromLayer(layerOfPile(planned, plannedDate.value));
  const put = await changePassage(over, ({ coats }) => ({ coats: [...coats, coat] }));
  if (put) showNotice(paletteTexts.laid(planned.pile.name), put.undo);
}
