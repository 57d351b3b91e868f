import type { LeftoverBody } from '../../../book/schema/palette.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { PilePlan } from '../../../palette/day-plan.ts';
import { leftoverFromPile, type StorageWay } from '../../../palette/leftovers.ts';
import { layerOfPile } from '../../../palette/piles-from-recipes.ts';
import { newId } from '../../state/new-id.ts';
import { passageById, plannedDate } from '../../state/palette/day-entries.ts';
import { coatFromLayer, leftoverBodyOf } from '../../state/palette/palette-records.ts';
import { saveDayEntry } from '../../state/palette/save-entry.ts';
import { showNotice } from '../../state/studio.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { changePassage } from './passage-actions.ts';

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
