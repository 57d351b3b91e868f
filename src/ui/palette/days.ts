import { computed, effect, signal } from '@preact/signals';
import { bookFaultWords } from '../../book/faults.ts';
import type { Entry, Kind } from '../../book/record.ts';
import type { Book } from '../../book/store.ts';
import { place } from '../route.ts';
import { book, complain, edition } from '../studio.ts';

/** The studio's own palette: its shape, its seats and its rules, from which every day begins. */
export const STUDIO_ID = 'studio-palette';
/** Today where the painter is, as an ISO day. */
export function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The day that is being prepared. */
export const date = signal(today());

export interface Kept {
  readonly palettes: readonly Entry<'palette'>[];
  readonly passages: readonly Entry<'passage'>[];
  readonly leftovers: readonly Entry<'leftover'>[];
  readonly sheets: readonly Entry<'sheet'>[];
}
/** What the book holds of all days; null until it was read. */
export const kept = signal<Kept | null>(null);

async function all<K extends Kind>(from: Book, kind: K): Promise<readonly Entry<K>[]> {
  const cards = await from.list(kind);
  if (!cards.ok) {
    complain(bookFaultWords(cards.fault));
    return [];
  }
  const found = await Promise.all(cards.value.map(({ id }) => from.get(kind, id)));
  return found.flatMap((one) => (one.ok && one.value.deletedAt === undefined ? [one.value] : []));
}

async function readAll(from: Book): Promise<void> {
  const [palettes, passages, leftovers, sheets] = await Promise.all([
    all(from, 'palette'),
    all(from, 'passage'),
    all(from, 'leftover'),
    all(from, 'sheet'),
  ]);
  kept.value = {
    palettes: palettes.toSorted((a, b) => (a.created < b.created ? -1 : 1)),
    passages,
    leftovers,
    sheets,
  };
}

let reading: Promise<void> = Promise.resolve();
effect(() => {
  edition.value;
  const from = book.value;
  if (from === null || place.value !== 'palette') return;
  reading = reading.then(() => readAll(from));
});

export const studioPalette = computed(
  () => kept.value?.palettes.find(({ id }) => id === STUDIO_ID) ?? null,
);
/** The palettes of the day, the first first. */
export const palettes = computed(() =>
  (kept.value?.palettes ?? []).filter(
    (one) => one.id !== STUDIO_ID && one.body.date === date.value,
  ),
);
export const passage = (id: string): Entry<'passage'> | null =>
  kept.value?.passages.find((one) => one.id === id) ?? null;

/** What is left from days before and can still be offered. */
export const leftovers = computed(() =>
  (kept.value?.leftovers ?? []).filter(({ body }) => body.used === undefined),
);
/** The day's sheet: what left the stock for it stands there. */
export const sheet = computed(
  () => kept.value?.sheets.find(({ id }) => id === sheetId(date.value)) ?? null,
);
export const sheetId = (day: string) => `sheet-${day}`;
