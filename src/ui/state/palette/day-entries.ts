import { computed, effect, signal } from '@preact/signals';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { STUDIO_PALETTE } from '../../../book/schema/palette.ts';
import type { Entry, Kind } from '../../../book/schema/record.ts';
import { isSample } from '../../../book/schema/sample-ids.ts';
import type { Book } from '../../../book/store/open-book.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { isDay } from '../../../palette/iso-date.ts';
import { today } from '../locale-format.ts';
import { hrefOf, place, route } from '../route.ts';
import { book, bookReady, bookRevision, showError } from '../studio.ts';

/** ISO date of the day that is being prepared. */
export const plannedDate = signal(today());
// The route names the day; without a date it is today. A route to a passage leaves the date
// unchanged.
effect(() => {
  const { place: where, open, within } = route.value;
  if (where !== 'palette') return;
  const named = open === 'sheet' ? within[0] : open;
  if (named === null) plannedDate.value = today();
  else if (named !== undefined && isDay(named)) plannedDate.value = named;
});
/** Addresses of the day that is being prepared, and of its sheet. */
export const dayHref = (): string =>
  plannedDate.value === today() ? hrefOf('palette') : hrefOf('palette', plannedDate.value);
export const sheetHref = (): string => hrefOf('palette', 'sheet', plannedDate.value);
/** Opens the day that is being prepared. */
export const openDay = (): void => {
  location.hash = dayHref();
};

/** The book's entries for the Palette, of all days. */
export interface DayEntries {
  readonly palettes: readonly Entry<'palette'>[];
  readonly passages: readonly Entry<'passage'>[];
  readonly leftovers: readonly Entry<'leftover'>[];
  readonly sheets: readonly Entry<'sheet'>[];
  /** Summaries of the entries that can supply piles. */
  readonly sources: readonly EntrySummary[];
}
/** All days' entries in the book; null until they are read. */
export const dayEntries = signal<DayEntries | null>(null);

async function cardsOf(from: Book, kind: Kind): Promise<readonly EntrySummary[]> {
  const cards = await from.list(kind);
  if (cards.ok) return cards.value;
  showError(bookFaultWords(cards.fault));
  return [];
}

async function readEntriesOf<K extends Kind>(from: Book, kind: K): Promise<readonly Entry<K>[]> {
  const cards = await cardsOf(from, kind);
  const found = await Promise.all(cards.map(({ id }) => from.get(kind, id)));
  return found.flatMap((one) => (one.ok && one.value.deletedAt === undefined ? [one.value] : []));
}

async function readAll(from: Book): Promise<void> {
  const before = dayEntries.peek();
  const [palettes, passages, leftovers, sheets, ...sources] = await Promise.all([
    readEntriesOf(from, 'palette'),
    readEntriesOf(from, 'passage'),
    readEntriesOf(from, 'leftover'),
    readEntriesOf(from, 'sheet'),
    cardsOf(from, 'harmony'),
    cardsOf(from, 'drapery'),
    cardsOf(from, 'formula'),
  ]);
  // This window wrote meanwhile, which is newer than what was read: read again.
  if (dayEntries.peek() !== before) return readAll(from);
  const read: DayEntries = {
    palettes: palettes.toSorted((a, b) => (a.created < b.created ? -1 : 1)),
    passages,
    leftovers,
    sheets,
    sources: sources.flat(),
  };
  // Unchanged entries cause no new rendering and no new plan.
  if (!before || revisionKey(before) !== revisionKey(read)) dayEntries.value = read;
}

/** Equal for the same entries in the same versions. */
const revisionKey = (all: DayEntries): string =>
  Object.values(all)
    .flat()
    .map(({ id, changed }: Entry | EntrySummary) => `${id} ${changed}`)
    .sort()
    .join();

/** Reads all days' entries from the book, unless they are already read. */
export async function loadDayEntries(): Promise<void> {
  const from = await bookReady;
  if (from && dayEntries.peek() === null) await readAll(from);
}

let reading: Promise<void> = Promise.resolve();
effect(() => {
  bookRevision.value;
  const from = book.value;
  if (from === null || place.value !== 'palette') return;
  reading = reading.then(() => readAll(from));
});

export const studioPalette = computed(
  () => dayEntries.value?.palettes.find(({ id }) => id === STUDIO_PALETTE) ?? null,
);
/** Palettes of the day, in the order of their creation. */
export const dayPalettes = computed(() =>
  (dayEntries.value?.palettes ?? []).filter(
    (one) => one.id !== STUDIO_PALETTE && one.body.date === plannedDate.value,
  ),
);
export const passageById = (id: string): Entry<'passage'> | null =>
  dayEntries.value?.passages.find((one) => one.id === id) ?? null;

/** Whether the sample book's palettes are for this day: its leftovers belong to that day only. */
const isSampleDay = computed(() => dayPalettes.value.some(({ id }) => isSample(id)));
/** Unused leftovers that can be offered. */
export const offeredLeftovers = computed(() =>
  (dayEntries.value?.leftovers ?? []).filter(
    ({ id, body }) => body.used === undefined && isSample(id) === isSampleDay.value,
  ),
);
/** The day's saved sheet, with what it took from the stock; null if there is none. */
export const daySheet = computed(() => {
  const all = dayEntries.value?.sheets ?? [];
  const ofDay = all.find(({ id }) => id === sheetId(plannedDate.value));
  const ofSample = all.find(({ id, body }) => isSample(id) && body.date === plannedDate.value);
  return ofDay ?? (isSampleDay.value ? ofSample : null) ?? null;
});
export const sheetId = (day: string) => `sheet-${day}`;
