import type { PassageBody, PileRecord } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import type { Undo } from '../../book/store.ts';
import { MOST_PALETTES } from '../../palette/faults.ts';
import { today } from '../locale.ts';
import { go } from '../route.ts';
import { complain, opening, tell } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { date, palettes, passage, wantKept } from './days.ts';
import { namedApart, pilesFrom, type Source } from './from.ts';
import { rules } from './rules.ts';
import { backAll, inTurn, remove, save } from './save.ts';

export const newId = (): string => crypto.randomUUID();

/** Names of all piles on the day's palettes. */
const pileNames = (): readonly string[] =>
  palettes.value.flatMap(({ body }) =>
    body.passages.flatMap((id) => passage(id)?.body.piles.map(({ name }) => name) ?? []),
  );

/** The entry with this id, if it can supply piles; otherwise null, and an error is shown. */
export async function sourceOf(id: string): Promise<Source | null> {
  const from = await opening;
  if (!from) return null;
  for (const kind of ['harmony', 'drapery', 'formula'] as const) {
    const found = await from.get(kind, id);
    if (found.ok) return found.value;
  }
  complain(sayPalette.sourceGone);
  return null;
}

/**
 * Creates a passage for the day and opens it.
 *
 * @param source supplies its piles; null for an empty passage
 * @param on the palette that it goes on; null for a new one
 */
export async function newPassage(
  source: Source | null,
  on: Entry<'palette'> | null,
): Promise<void> {
  const piles = source ? namedApart(pilesFrom(source, newId), pileNames()) : [];
  if (source && piles.length === 0) complain(sayPalette.nothingMixed);
  const id = newId();
  const body: PassageBody = {
    name: source?.body.name || sayPalette.newPassage,
    note: '',
    painting: '',
    from: source?.id ?? null,
    piles,
    coats: [],
  };
  if (!(await save({ kind: 'passage', id, body }, null))) return;
  await putOn(id, on);
  go('palette', id);
}

/** Creates a passage from an entry of the book on one of today's palettes, and opens it. */
export async function layOut(id: string): Promise<void> {
  const source = await sourceOf(id);
  if (!source) return;
  await wantKept();
  date.value = today();
  const isFull = palettes.value.length >= MOST_PALETTES;
  await newPassage(source, isFull ? (palettes.value[0] ?? null) : null);
}

/**
 * Puts a passage on a palette of the day.
 *
 * @param palette null creates a palette, unless the day has the maximum
 * @returns undefined if nothing changed
 */
export async function putOn(
  id: string,
  palette: Entry<'palette'> | null,
): Promise<Undo | undefined> {
  if (palette) {
    if (palette.body.passages.includes(id)) return undefined;
    const body = { ...palette.body, passages: [...palette.body.passages, id] };
    const put = await save({ kind: 'palette', id: palette.id, over: palette, body }, null);
    return put?.undo;
  }
  if (palettes.value.length >= MOST_PALETTES) {
    complain(sayPalette.threeAtMost);
    return undefined;
  }
  const { shape, hand } = rules.value;
  const taken = palettes.value.map(({ body }) => body.name);
  const name = [1, 2, 3].map(sayPalette.paletteNamed).find((one) => !taken.includes(one));
  const put = await save(
    {
      kind: 'palette',
      id: newId(),
      body: {
        name: name ?? sayPalette.paletteNamed(taken.length + 1),
        note: '',
        date: date.value,
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
async function lift(id: string): Promise<readonly (Undo | undefined)[]> {
  const undos: (Undo | undefined)[] = [];
  for (const palette of palettes.value.filter(({ body }) => body.passages.includes(id))) {
    const passages = palette.body.passages.filter((one) => one !== id);
    const body = { ...palette.body, passages };
    const put =
      passages.length === 0
        ? await remove('palette', palette.id)
        : await save({ kind: 'palette', id: palette.id, over: palette, body }, null);
    undos.push(put?.undo);
  }
  return undos;
}

export async function takeOff({ id, body }: Entry<'passage'>): Promise<void> {
  const undos = await lift(id);
  tell(sayPalette.takenOff(body.name), backAll(undos));
}

/** Moves a passage to another palette of the day; null gives it a new one. */
export async function moveTo(
  { id, body }: Entry<'passage'>,
  to: Entry<'palette'> | null,
): Promise<void> {
  if (to === null && palettes.value.length >= MOST_PALETTES)
    return complain(sayPalette.threeAtMost);
  const undos = await lift(id);
  const on = palettes.value.find((one) => one.id === to?.id) ?? null;
  const put = await putOn(id, on);
  if (put) tell(sayPalette.movedTo(body.name), backAll([...undos, put]));
}

/** Moves a passage to the bin, and off the day. */
export async function deletePassage({ id, body }: Entry<'passage'>): Promise<void> {
  const undos = await lift(id);
  const removed = await remove('passage', id);
  if (removed) tell(sayPalette.deleted(body.name), backAll([...undos, removed.undo]));
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
  inTurn(async () => {
    const over = passage(shown.id) ?? shown;
    const changes = typeof change === 'function' ? change(over.body) : change;
    const { canvas, ...body } = { ...over.body, ...changes };
    const sized = canvas && canvas.widthCm + canvas.heightCm > 0;
    return save(
      { kind: 'passage', id: over.id, over, body: sized ? { ...body, canvas } : body },
      said,
    );
  });

export const changePile = (
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
      ...namedApart(piles, [...pileNames(), ...body.piles.map(({ name }) => name)]),
    ],
  }));
