import { batch } from '@preact/signals';
import { changeWords } from '../../../colour/words.ts';
import {
  correct,
  drop,
  type EditedHarmony,
  type EditFault,
  markSheen,
  rename,
} from '../../../harmony/edit.ts';
import { joinTwo } from '../../../harmony/reshape.ts';
import { vary, type Way } from '../../../harmony/vary.ts';
import type { Place } from '../../../photo/mask.ts';
import type { Result } from '../../../result.ts';
import { faultWords, lookFrom } from '../../gathering.ts';
import { complain } from '../../studio.ts';
import { chosen, labels, mark, show, specimen, stepNow, studied } from '../state.ts';
import { harmonyNow, pictureOf } from './gathered.ts';
import { look } from './look.ts';

/**
 * Shows an edited harmony as one undo step, or an error. Variants follow their colour by name.
 * @param called name of the colour to select
 * @param was its former name
 * @returns whether the edit succeeded
 */
function settle(
  result: Result<EditedHarmony, EditFault>,
  { called, was, hasDropped = false }: { called?: string; was?: string; hasDropped?: boolean } = {},
): boolean {
  if (!result.ok) {
    complain(faultWords(result.fault));
    return false;
  }
  const { colours, labels: map } = result.value;
  const taken = new Map(studied.value.map((one) => [one.gathered.name, one.taken]));
  if (was !== undefined && called !== undefined) taken.set(called, taken.get(was) ?? []);
  batch(() => {
    mark();
    show({
      ...stepNow(),
      studied: colours.map((colour) => ({
        gathered: colour,
        taken: taken.get(colour.name) ?? [],
      })),
      labels: labels.value && map,
      look: hasDropped ? { ...look.value, hasDropped } : look.value,
    });
    const index = colours.findIndex(({ name }) => name === called);
    if (index >= 0) chosen.value = index;
  });
  return true;
}

const nameAt = (index: number): string => studied.value[index]?.gathered.name ?? '';

/** Renames a colour; its variants stay. @returns false after an error, which the painter sees */
export function renameColour(index: number, name: string): boolean {
  const was = nameAt(index);
  if (name.trim() === was) return true;
  const called = name.trim();
  return settle(rename(harmonyNow(), index, name), { called, was });
}

/** Removes a colour. @returns false after an error, which the painter sees */
export const dropColour = (index: number): boolean =>
  settle(drop(harmonyNow(), index), { hasDropped: true });

/** Merges two colours and selects the merged one. @returns false after an error */
export function joinColours(first: number, second: number): boolean {
  const colours = harmonyNow().colours;
  const [p, q] = [colours[first], colours[second]];
  const called = (p?.share ?? 0) >= (q?.share ?? 0) ? nameAt(first) : nameAt(second);
  return settle(joinTwo(harmonyNow(), first, second), { called });
}

/** Marks a colour as a sheen, or not. @returns false after an error, which the painter sees */
export const setSheen = (index: number, sheen: boolean): boolean =>
  settle(markSheen(harmonyNow(), index, sheen));

/** Adds one small step to the corrections of a colour by eye. @returns false after an error */
export function correctByEye(index: number, way: Way): boolean {
  const harmony = harmonyNow();
  const colour = harmony.colours[index];
  if (!colour) return false;
  const { lab } = vary(colour.lab, way, 'small');
  const change = changeWords(colour.asGathered ?? colour.lab, lab);
  const words = change === 'no change seen' ? 'by eye' : `by eye: ${change}`;
  return settle(correct(harmony, index, lab, words));
}

/** Removes a colour's corrections by eye. @returns false if there are none, or after an error */
export function uncorrect(index: number): boolean {
  const harmony = harmonyNow();
  const colour = harmony.colours[index];
  if (!colour?.asGathered) return false;
  const back = correct(harmony, index, colour.asGathered);
  if (!back.ok) return settle(back);
  const { asGathered: _g, altered: _a, ...plain } = back.value.colours[index]!;
  return settle({
    ok: true,
    value: { ...back.value, colours: back.value.colours.with(index, plain) },
  });
}

/**
 * Adds the mean colour of a patch.
 * @param patch its side as a fraction of the shorter edge
 */
export const addAt = ([x, y]: Place, patch: number): Promise<void> =>
  lookAt({ kind: 'add', x, y, patch });

/** Splits a colour's region in two. */
export const splitColour = (index: number): Promise<void> => lookAt({ kind: 'split', index });

/** Runs an edit that needs the photograph's pixels, in the worker, and shows its result. */
async function lookAt(act: Parameters<typeof lookFrom>[0]['act']): Promise<void> {
  const entry = specimen.value;
  if (!entry || !labels.value) return;
  const file = await pictureOf(entry);
  if (!file) return;
  const harmony = harmonyNow();
  const { light } = look.value;
  const result = await lookFrom(
    { file, harmony, act, ...(light ? { adapt: light.matrix } : {}) },
    entry.id,
  );
  if (!result || specimen.value?.id !== entry.id) return;
  if (!result.ok) return complain(faultWords(result.fault));
  const old = new Set(harmony.colours.map(({ name }) => name));
  const called = result.value.colours.find(({ name }) => !old.has(name))?.name;
  settle(result, called === undefined ? {} : { called });
}
