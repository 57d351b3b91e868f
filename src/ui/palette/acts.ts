import { bookFaultWords } from '../../book/faults.ts';
import type { LeftoverBody, PassageBody, PileRecord } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import { bodyOfStock } from '../../book/shelf.ts';
import { MOST_PALETTES } from '../../palette/faults.ts';
import { type Kept, putAway } from '../../palette/leftover.ts';
import type { Day, PilePlan } from '../../palette/plan.ts';
import { layerOfPile } from '../../palette/source.ts';
import { putBack, type Taking, takeFrom } from '../../palette/supply.ts';
import type { Stock } from '../../pigment/stock.ts';
import { ok } from '../../result.ts';
import { go } from '../route.ts';
import { SHELF_ID } from '../shelf/stocked.ts';
import { complain, notice, opening, stocked, tell } from '../studio.ts';
import { namedApart, pilesFrom, type Source } from './from.ts';
import { amountsOf, coatOf, leftoverBodyOf } from './kept.ts';
import {
  date,
  inTurn,
  isCounted,
  palettes,
  passage,
  plan,
  rules,
  save,
  sheet,
  sheetId,
  today,
  wantKept,
} from './state.ts';
import { sayPalette } from './words.ts';

export const newId = (): string => crypto.randomUUID();

/** Names of all piles on the day's palettes. */
const pileNames = (): readonly string[] =>
  palettes.value.flatMap(({ body }) =>
    body.passages.flatMap((id) => passage(id)?.body.piles.map(({ name }) => name) ?? []),
  );

/** What the book has under this id, to take piles from. */
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

/** A new passage for the day, on its first palette, from something in the book or empty. */
export async function newPassage(source: Source | null): Promise<void> {
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
  await putOn(id, palettes.value[0] ?? null);
  go('palette', id);
}

/** Takes something of the book to today's palette, as a new passage, and opens that. */
export async function layOut(id: string): Promise<void> {
  const source = await sourceOf(id);
  if (!source) return;
  await wantKept();
  date.value = today();
  await newPassage(source);
}

/** Puts a passage on a palette of the day; null lays a new one. */
export async function putOn(id: string, palette: Entry<'palette'> | null): Promise<void> {
  if (palette) {
    if (palette.body.passages.includes(id)) return;
    const body = { ...palette.body, passages: [...palette.body.passages, id] };
    await save({ kind: 'palette', id: palette.id, over: palette, body }, null);
    return;
  }
  if (palettes.value.length >= MOST_PALETTES) return complain(sayPalette.threeAtMost);
  const { shape, hand } = rules.value;
  await save(
    {
      kind: 'palette',
      id: newId(),
      body: {
        name: sayPalette.paletteNamed(palettes.value.length + 1),
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
}

/** Takes a passage off the day; it stays in the book. A palette without passages goes. */
export async function takeOff(id: string): Promise<void> {
  for (const palette of palettes.value.filter(({ body }) => body.passages.includes(id))) {
    const passages = palette.body.passages.filter((one) => one !== id);
    if (passages.length === 0) await (await opening)?.remove(palette.id);
    else
      await save(
        { kind: 'palette', id: palette.id, over: palette, body: { ...palette.body, passages } },
        null,
      );
  }
}

/** Moves a passage from where it lies to another palette of the day, or to one of its own. */
export async function moveTo(id: string, to: Entry<'palette'> | null): Promise<void> {
  if (to === null && palettes.value.length >= MOST_PALETTES)
    return complain(sayPalette.threeAtMost);
  const target = to?.id;
  await takeOff(id);
  await putOn(id, palettes.value.find((one) => one.id === target) ?? null);
}

/** Changes a passage as it stands by now: what another field has just kept is not lost. */
export const changePassage = (
  shown: Entry<'passage'>,
  change: Partial<PassageBody> | ((body: PassageBody) => Partial<PassageBody>),
) =>
  inTurn(async () => {
    const over = passage(shown.id) ?? shown;
    const changes = typeof change === 'function' ? change(over.body) : change;
    const { canvas, ...body } = { ...over.body, ...changes };
    const sized = canvas && canvas.widthCm + canvas.heightCm > 0;
    return save(
      { kind: 'passage', id: over.id, over, body: sized ? { ...body, canvas } : body },
      null,
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

async function putStock(stock: Stock): Promise<boolean> {
  const over = stocked.value;
  const into = await opening;
  if (!over || !into) return false;
  const put = await into.put({
    kind: 'shelf',
    id: SHELF_ID,
    over,
    body: bodyOfStock(stock, over.body.note),
  });
  if (!put.ok) {
    complain(bookFaultWords(put.fault));
    return false;
  }
  stocked.value = put.value.entry;
  return true;
}

/** Keeps the day's sheet in the book, as it stands. */
export async function keepSheet(
  day: Day,
  prepared: { readonly prepared: string; readonly taken: readonly Taking[] } | null,
): Promise<boolean> {
  const over = sheet.value;
  const put = await save(
    {
      kind: 'sheet',
      id: over?.id ?? sheetId(day.date),
      ...(over ? { over } : {}),
      body: {
        name: sayPalette.sheetNamed(day.date),
        note: over?.body.note ?? '',
        date: day.date,
        palettes: palettes.value.map(({ id }) => id),
        amounts: amountsOf(day),
        ...(prepared ?? {}),
      },
    },
    null,
  );
  return put !== null;
}

/** The day is prepared: what it took leaves the stock, once. */
export async function prepare(): Promise<void> {
  const planned = plan.value;
  if (!planned || sheet.value?.body.prepared) return;
  const { day } = planned;
  const stock = stocked.value?.body.stock;
  const after = stock && isCounted.value ? takeFrom(stock, day.takings) : null;
  if (after && !(await putStock(after.stock))) return;
  const taken = after?.taken ?? [];
  if (!(await keepSheet(day, { prepared: new Date().toISOString(), taken }))) {
    if (after) await putStock(stock!);
    return;
  }
  tell(taken.length > 0 ? sayPalette.prepared : sayPalette.preparedUncounted, async () => {
    await unprepare(false);
    return ok(null);
  });
}

/** Puts back what the day took. */
export async function unprepare(said = true): Promise<void> {
  const over = sheet.value;
  if (!over) return;
  const { prepared: _, taken, ...rest } = over.body;
  const stock = stocked.value?.body.stock;
  if (taken && taken.length > 0 && stock && !(await putStock(putBack(stock, taken)))) return;
  await save({ kind: 'sheet', id: over.id, over, body: rest }, null);
  if (said) tell(sayPalette.putBack);
  else notice.value = null;
}

/** What is left of a pile at the day's end. */
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

/** A pile was laid on the painting: from now on it is a coat of its passage. */
export async function laid(planned: PilePlan): Promise<void> {
  const over = passage(planned.passage.id);
  if (!over) return;
  const coat = coatOf(layerOfPile(planned, date.value));
  const put = await changePassage(over, ({ coats }) => ({ coats: [...coats, coat] }));
  if (put) tell(sayPalette.laid(planned.pile.name), put.undo);
}
