import type { PassageBody, PileRecord } from '../../../book/schema/palette.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Undo } from '../../../book/store/open-book.ts';
import { MOST_PALETTES } from '../../../palette/palette-faults.ts';
import { today } from '../../state/locale-format.ts';
import { newId } from '../../state/new-id.ts';
import {
  dayPalettes,
  loadDayEntries,
  passageById,
  plannedDate,
} from '../../state/palette/day-entries.ts';
import {
  combineUndos,
  removeDayEntry,
  runInSequence,
  saveDayEntry,
} from '../../state/palette/save-entry.ts';
import { studioRules } from '../../state/palette/studio-rules.ts';
import { go } from '../../state/route.ts';
import { bookReady, showError, showNotice } from '../../state/studio.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { type PassageSource, pilesOfSource, withUniqueNames } from './passage-sources.ts';

/** Names of all piles on the day's palettes. */
const pileNames = (): readonly string[] =>
  dayPalettes.value.flatMap(({ body }) =>
    body.passages.flatMap((id) => passageById(id)?.body.piles.map(({ name }) => name) ?? []),
  );

/** The entry with this id, if it can supply piles; otherwise null, and an error is shown. */
export async function readPassageSource(id: string): Promise<PassageSource | null> {
  const from = await bookReady;
  if (!from) return null;
  for (const kind of ['harmony', 'drapery', 'formula'] as const) {
    const found = await from.get(kind, id);
    if (found.ok) return found.value;
  }
  showError(paletteTexts.sourceGone);
  return null;
}

/**
 * Creates a passage for the day and opens it.
 *
 * @param source supplies its piles; null for an empty passage
 * @param on the palette that it goes on; null for a new one
 */
export async function createPassage(
  source: PassageSource | null,
  on: Entry<'palette'> | null,
): Promise<void> {
  const piles = source ? withUniqueNames(pilesOfSource(source, newId), pileNames()) : [];
  if (source && piles.length === 0) showError(paletteTexts.nothingMixed);
  const id = newId();
  const body: PassageBody = {
    name: source?.body.name || paletteTexts.newPassage,
    note: '',
    painting: '',
    from: source?.id ?? null,
    piles,
    coats: [],
  };
  if (!(await saveDayEntry({ kind: 'passage', id, body }, null))) return;
  await addToPalette(id, on);
  go('palette', id);
}

/** Creates a passage from an entry of the book on one of today's palettes, and opens it. */
export async function layOutEntry(id: string): Promise<void> {
  const source = await readPassageSource(id);
  if (!source) return;
  await loadDayEntries();
  plannedDate.value = today();
  const isFull = dayPalettes.value.length >= MOST_PALETTES;
  await createPassage(source, isFull ? (dayPalettes.value[0] ?? null) : null);
}

/**
 * Puts a passage on a palette of the day.
 *
 * @param palette null creates a palette, unless the day has the maximum
 * @returns undefined if nothing changed
 */
export async function addToPalette(
  id: string,
  palette: Entry<'palette'> | null,
): Promise<Undo | undefined> {
  if (palette) {
    if (palette.body.passages.includes(id)) return undefined;
    const body = { ...palette.body, passages: [...palette.body.passages, id] };
    const put = await saveDayEntry({ kind: 'palette', id: palette.id, over: palette, body }, null);
    return put?.undo;
  }
  if (dayPalettes.value.length >= MOST_PALETTES) {
    showError(paletteTexts.threeAtMost);
    return undefined;
  }
  const { shape, hand } = studioRules.value;
  const taken = dayPalettes.value.map(({ body }) => body.name);
  const name = [1, 2, 3].map(paletteTexts.paletteNamed).find((one) => !taken.includes(one));
  const put = await saveDayEntry(
    {
      kind: 'palette',
      id: newId(),
      body: {
        name: name ?? paletteTexts.paletteNamed(taken.length + 1),
        note: '',
        date: plannedDate.value,
        shape: shape === 'oval' ? 'oval' : 'square-cornered',
        hand,
        seats: [],
        passages: [id],
        piles: [],
      },
    },
    null,
  );
  return put?.undo;
}

/** Takes a passage off the day's palettes; it stays in the book. Deletes palettes left empty. */
async function removeFromPalettes(id: string): Promise<readonly (Undo | undefined)[]> {
  const undos: (Undo | undefined)[] = [];
  for (const palette of dayPalettes.value.filter(({ body }) => body.passages.includes(id))) {
    const passages = palette.body.passages.filter((one) => one !== id);
    const body = { ...palette.body, passages };
    const put =
      passages.length === 0
        ? await removeDayEntry('palette', palette.id)
        : await saveDayEntry({ kind: 'palette', id: palette.id, over: palette, body }, null);
    undos.push(put?.undo);
  }
  return undos;
}

export async function takePassageOff({ id, body }: Entry<'passage'>): Promise<void> {
  const undos = await removeFromPalettes(id);
  showNotice(paletteTexts.takenOff(body.name), combineUndos(undos));
}

/** Moves a passage to another palette of the day; null gives it a new one. */
export async function movePassage(
  { id, body }: Entry<'passage'>,
  to: Entry<'palette'> | null,
): Promise<void> {
  if (to === null && dayPalettes.value.length >= MOST_PALETTES)
    return showError(paletteTexts.threeAtMost);
  const undos = await removeFromPalettes(id);
  const on = dayPalettes.value.find((one) => one.id === to?.id) ?? null;
  const put = await addToPalette(id, on);
  if (put) showNotice(paletteTexts.movedTo(body.name), combineUndos([...undos, put]));
}

/** Moves a passage to the bin, and off the day. */
export async function deletePassage({ id, body }: Entry<'passage'>): Promise<void> {
  const undos = await removeFromPalettes(id);
  const removed = await removeDayEntry('passage', id);
  if (removed) showNotice(paletteTexts.deleted(body.name), combineUndos([...undos, removed.undo]));
}

/**
 * Changes a passage's current version, so that another field's latest change is not lost. The
 * canvas is dropped when both its sides are 0.
 */
export const changePassage = (
  shown: Entry<'passage'>,
  change: Partial<PassageBody> | ((body: PassageBody) => Partial<PassageBody>),
  /** Success notice, shown with undo; null for none. */
  said: string | null = null,
) =>
  runInSequence(async () => {
    const over = passageById(shown.id) ?? shown;
    const changes = typeof change === 'function' ? change(over.body) : change;
    const { canvas, ...body } = { ...over.body, ...changes };
    const sized = canvas && canvas.widthCm + canvas.heightCm > 0;
    return saveDayEntry(
      { kind: 'passage', id: over.id, over, body: sized ? { ...body, canvas } : body },
      said,
    );
  });

export const editPile = (
  over: Entry<'passage'>,
  at: number,
  change: (pile: PileRecord) => PileRecord,
) =>
  changePassage(over, ({ piles }) => ({
    piles: piles.map((pile, i) => (i === at ? change(pile) : pile)),
  }));

export const addPiles = (over: Entry<'passage'>, piles: readonly PileRecord[]) =>
  changePassage(over, (body) => ({
    piles: [
      ...body.piles,
      ...withUniqueNames(piles, [...pileNames(), ...body.piles.map(({ name }) => name)]),
    ],
  }));
