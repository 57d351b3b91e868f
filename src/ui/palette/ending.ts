import type { LeftoverBody } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import { type Kept, putAway } from '../../palette/leftover.ts';
import type { PilePlan } from '../../palette/plan.ts';
import { layerOfPile } from '../../palette/source.ts';
import { tell } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { date, passage } from './days.ts';
import { coatOf, leftoverBodyOf } from './kept.ts';
import { changePassage, newId } from './passages.ts';
import { save } from './save.ts';

/**
 * Saves the rest of a pile at the end of the day as a leftover.
 *
 * @param kept its volume in cm³, and how it is stored
 */
export const noteLeftover = (
  { pile, lab }: PilePlan,
  kept: { readonly cm3: number; readonly kept: Kept },
) => {
  const left = putAway(
    { name: pile.name, parts: pile.parts, letDowns: pile.letDowns, lab },
    { ...kept, id: newId(), date: date.value },
  );
  return save(
    { kind: 'leftover', id: left.id, body: leftoverBodyOf(left) },
    sayPalette.noted(pile.name),
  );
};

export const changeLeftover = (
  over: Entry<'leftover'>,
  change: Partial<LeftoverBody>,
  said: string,
) => save({ kind: 'leftover', id: over.id, over, body: { ...over.body, ...change } }, said);

/** Records that a pile was laid: adds it to the coats of its passage. */
export async function laid(planned: PilePlan): Promise<void> {
  const over = passage(planned.passage.id);
  if (!over) return;
  const coat = coatOf(layerOfPile(planned, date.value));
  const put = await changePassage(over, ({ coats }) => ({ coats: [...coats, coat] }));
  if (put) tell(sayPalette.laid(planned.pile.name), put.undo);
}
