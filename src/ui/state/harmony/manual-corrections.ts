import { batch } from '@preact/signals';
import { changeWords } from '../../../colour/describe-colour.ts';
import {
  correctColourByEye,
  type EditedHarmony,
  type EditFault,
  markSheen,
  removeColour,
  withColourName,
} from '../../../harmony/manual-edits.ts';
import { mergeColours } from '../../../harmony/merge-split.ts';
import { type VariantWay, variantTarget } from '../../../harmony/variant-target.ts';
import type { ImagePoint } from '../../../photo/mask.ts';
import type { Result } from '../../../result.ts';
import { faultWords, reexaminePhotograph } from '../photograph-import.ts';
import { showError } from '../studio.ts';
import {
  currentSnapshot,
  harmonyColours,
  pushUndoStep,
  regionLabels,
  selectedIndex,
  showSnapshot,
  specimen,
} from './current-harmony.ts';
import { editedHarmony, readPhotograph } from './gather-again.ts';
import { gatheringSettings } from './gathering-settings.ts';

/**
 * Shows an edited harmony as one undo step, or an error. Variants follow their colour by name.
 * @param called name of the colour to select
 * @param was its former name
 * @returns whether the edit succeeded
 */
function showEdited(
  result: Result<EditedHarmony, EditFault>,
  { called, was, hasDropped = false }: { called?: string; was?: string; hasDropped?: boolean } = {},
): boolean {
  if (!result.ok) {
    showError(faultWords(result.fault));
    return false;
  }
  const { colours, labels: map } = result.value;
  const taken = new Map(harmonyColours.value.map((one) => [one.gathered.name, one.taken]));
  if (was !== undefined && called !== undefined) taken.set(called, taken.get(was) ?? []);
  batch(() => {
    pushUndoStep();
    showSnapshot({
      ...currentSnapshot(),
      studied: colours.map((colour) => ({
        gathered: colour,
        taken: taken.get(colour.name) ?? [],
      })),
      labels: regionLabels.value && map,
      look: hasDropped ? { ...gatheringSettings.value, hasDropped } : gatheringSettings.value,
    });
    const index = colours.findIndex(({ name }) => name === called);
    if (index >= 0) selectedIndex.value = index;
  });
  return true;
}

const nameAt = (index: number): string => harmonyColours.value[index]?.gathered.name ?? '';

/** Renames a colour; its variants stay. @returns false after an error, which the painter sees */
export function renameColour(index: number, name: string): boolean {
  const was = nameAt(index);
  if (name.trim() === was) return true;
  const called = name.trim();
  return showEdited(withColourName(editedHarmony(), index, name), { called, was });
}

/** Removes a colour. @returns false after an error, which the painter sees */
export const dropColour = (index: number): boolean =>
  showEdited(removeColour(editedHarmony(), index), { hasDropped: true });

/** Merges two colours and selects the merged one. @returns false after an error */
export function mergeHarmonyColours(first: number, second: number): boolean {
  const colours = editedHarmony().colours;
  const [p, q] = [colours[first], colours[second]];
  const called = (p?.share ?? 0) >= (q?.share ?? 0) ? nameAt(first) : nameAt(second);
  return showEdited(mergeColours(editedHarmony(), first, second), { called });
}

/** Marks a colour as a sheen, or not. @returns false after an error, which the painter sees */
export const setSheen = (index: number, sheen: boolean): boolean =>
  showEdited(markSheen(editedHarmony(), index, sheen));

/** Adds one small step to the corrections of a colour by eye. @returns false after an error */
export function correctByEye(index: number, way: VariantWay): boolean {
  const harmony = editedHarmony();
  const colour = harmony.colours[index];
  if (!colour) return false;
  const { lab } = variantTarget(colour.lab, way, 'small');
  const change = changeWords(colour.asGathered ?? colour.lab, lab);
  const words = change === 'no change seen' ? 'by eye' : `by eye: ${change}`;
  return showEdited(correctColourByEye(harmony, index, lab, words));
}

/** Removes a colour's corrections by eye. @returns false if there are none, or after an error */
export function removeCorrections(index: number): boolean {
  const harmony = editedHarmony();
  const colour = harmony.colours[index];
  if (!colour?.asGathered) return false;
  const back = correctColourByEye(harmony, index, colour.asGathered);
  if (!back.ok) return showEdited(back);
  const { asGathered: _g, altered: _a, ...plain } = back.value.colours[index]!;
  return showEdited({
    ok: true,
    value: { ...back.value, colours: back.value.colours.with(index, plain) },
  });
}

/**
 * Adds the mean colour of a patch.
 * @param patch its side as a fraction of the shorter edge
 */
export const addAt = ([x, y]: ImagePoint, patch: number): Promise<void> =>
  editWithPixels({ kind: 'add', x, y, patch });

/** Splits a colour's region in two. */
export const splitColour = (index: number): Promise<void> =>
  editWithPixels({ kind: 'split', index });

/** Runs an edit that needs the photograph's pixels, in the worker, and shows its result. */
async function editWithPixels(
  act: Parameters<typeof reexaminePhotograph>[0]['act'],
): Promise<void> {
  const entry = specimen.value;
  if (!entry || !regionLabels.value) return;
  const file = await readPhotograph(entry);
  if (!file) return;
  const harmony = editedHarmony();
  const { light } = gatheringSettings.value;
  const result = await reexaminePhotograph(
    { file, harmony, act, ...(light ? { adapt: light.matrix } : {}) },
    entry.id,
  );
  if (!result || specimen.value?.id !== entry.id) return;
  if (!result.ok) return showError(faultWords(result.fault));
  const old = new Set(harmony.colours.map(({ name }) => name));
  const called = result.value.colours.find(({ name }) => !old.has(name))?.name;
  showEdited(result, called === undefined ? {} : { called });
}
