import { computed, effect, signal } from '@preact/signals';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { STUDIO_PALETTE } from '../../book/palette.ts';
import type { Entry, Kind } from '../../book/record.ts';
import { isSample } from '../../book/sampled.ts';
import type { Book } from '../../book/store.ts';
import { isDay } from '../../palette/calendar.ts';
import { today } from '../locale.ts';
import { hrefOf, place, route } from '../route.ts';
import { book, complain, edition, opening } from '../studio.ts';

/** The day that is being prepared. */
export const date = signal(today());
// The address says which day that is; without one it is today, and a passage belongs to the day at hand.
effect(() => {
  const { place: where, open, within } = route.value;
  if (where !== 'palette') return;
  const named = open === 'sheet' ? within[0] : open;
  if (named === null) date.value = today();
  else if (named !== undefined && isDay(named)) date.value = named;
});
/** The address of the day that is being prepared, and of its sheet. */
export const dayHref = (): string =>
  date.value === today() ? hrefOf('palette') : hrefOf('palette', date.value);
export const sheetHref = (): string => hrefOf('palette', 'sheet', date.value);
/** Opens the day that is being prepared. */
export const toDay = (): void => {
  location.hash = dayHref();
};

export interface Kept {
  readonly palettes: readonly Entry<'palette'>[];
  readonly passages: readonly Entry<'passage'>[];
  readonly leftovers: readonly Entry<'leftover'>[];
  readonly sheets: readonly Entry<'sheet'>[];
  /** What piles can be taken from. */
  readonly sources: readonly Card[];
}
/** What the book holds of all days; null until it was read. */
export const kept = signal<Kept | null>(null);

async function cardsOf(from: Book, kind: Kind): Promise<readonly Card[]> {
  const cards = await from.list(kind);
  if (cards.ok) return cards.value;
  complain(bookFaultWords(cards.fault));
  return [];
}

async function all<K extends Kind>(from: Book, kind: K): Promise<readonly Entry<K>[]> {
  const cards = await cardsOf(from, kind);
  const found = await Promise.all(cards.map(({ id }) => from.get(kind, id)));
  return found.flatMap((one) => (one.ok && one.value.deletedAt === undefined ? [one.value] : []));
}

async function readAll(from: Book): Promise<void> {
  const before = kept.peek();
  const [palettes, passages, leftovers, sheets, ...sources] = await Promise.all([
    all(from, 'palette'),
    all(from, 'passage'),
    all(from, 'leftover'),
    all(from, 'sheet'),
    cardsOf(from, 'harmony'),
    cardsOf(from, 'drapery'),
    cardsOf(from, 'formula'),
  ]);
  // What this window wrote meanwhile is newer than what was read.
  if (kept.peek() !== before) return readAll(from);
  const read: Kept = {
    palettes: palettes.toSorted((a, b) => (a.created < b.created ? -1 : 1)),
    passages,
    leftovers,
    sheets,
    sources: sources.flat(),
  };
  // What stands there already is not shown, nor planned, anew.
  if (!before || marksOf(before) !== marksOf(read)) kept.value = read;
}

/** The same for the same entries in the same versions. */
const marksOf = (all: Kept): string =>
  Object.values(all)
    .flat()
    .map(({ id, changed }: Entry | Card) => `${id} ${changed}`)
    .sort()
    .join();

/** Reads what the book holds of all days, where that was not read yet. */
export async function wantKept(): Promise<void> {
  const from = await opening;
  if (from && kept.peek() === null) await readAll(from);
}

let reading: Promise<void> = Promise.resolve();
effect(() => {
  edition.value;
  const from = book.value;
  if (from === null || place.value !== 'palette') return;
  reading = reading.then(() => readAll(from));
});

export const studioPalette = computed(
  () => kept.value?.palettes.find(({ id }) => id === STUDIO_PALETTE) ?? null,
);
/** The palettes of the day, the first first. */
export const palettes = computed(() =>
  (kept.value?.palettes ?? []).filter(
    (one) => one.id !== STUDIO_PALETTE && one.body.date === date.value,
  ),
);
export const passage = (id: string): Entry<'passage'> | null =>
  kept.value?.passages.find((one) => one.id === id) ?? null;

/** The sample book lies on this day's palettes: its leftovers are for it alone, and for no other day. */
const isSampleDay = computed(() => palettes.value.some(({ id }) => isSample(id)));
/** What is left from days before and can still be offered. */
export const leftovers = computed(() =>
  (kept.value?.leftovers ?? []).filter(
    ({ id, body }) => body.used === undefined && isSample(id) === isSampleDay.value,
  ),
);
/** The day's sheet: what left the stock for it stands there. */
export const sheet = computed(() => {
  const all = kept.value?.sheets ?? [];
  const ofDay = all.find(({ id }) => id === sheetId(date.value));
  const ofSample = all.find(({ id, body }) => isSample(id) && body.date === date.value);
  return ofDay ?? (isSampleDay.value ? ofSample : null) ?? null;
});
export const sheetId = (day: string) => `sheet-${day}`;
