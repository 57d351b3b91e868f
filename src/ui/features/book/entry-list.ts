import { computed, signal } from '@preact/signals';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { STUDIO_PALETTE } from '../../../book/schema/palette.ts';
import type { Kind } from '../../../book/schema/record.ts';
import type { Book } from '../../../book/store/open-book.ts';
import {
  createSearchIndex,
  type Query,
  type SearchHit,
  type Sort,
} from '../../../book/store/search-index.ts';
import type { Lab } from '../../../colour/lab.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { bookReady, showError } from '../../state/studio.ts';

/** False for the shelf and the studio's own palette, which have their own places. */
const listed = ({ id, kind }: EntrySummary): boolean => kind !== 'shelf' && id !== STUDIO_PALETTE;

/** All entries outside the bin, most recently changed first; null until they are read. */
export const entrySummaries = signal<readonly EntrySummary[] | null>(null);

/** A change of more entries than this reads the whole list again. */
const FEW = 40;
let wanted = false;

/** Loads the list when a screen first needs it, and keeps it up to date afterwards. */
export function loadEntries(): void {
  if (wanted) return;
  wanted = true;
  void bookReady.then((book) => {
    if (!book) return;
    let last = readAll(book);
    // One after the other, so that an older answer cannot replace a newer one.
    book.onChange(({ ids }) => {
      last = last.then(() =>
        ids.length > FEW || book.readOnly ? readAll(book) : readSome(book, ids),
      );
    });
  });
}

async function readAll(book: Book): Promise<void> {
  const list = await book.list();
  if (list.ok) entrySummaries.value = list.value.filter(listed);
  else showError(bookFaultWords(list.fault));
}

async function readSome(book: Book, ids: readonly string[]): Promise<void> {
  const read = await book.gateway.read(['cards'], (transaction) =>
    Promise.all(ids.map((id) => transaction.objectStore('cards').get(id))),
  );
  if (!read.ok) return showError(bookFaultWords(read.fault));
  const fresh = read.value.filter((card) => card !== undefined && card.deletedAt === undefined);
  const changed = new Set(ids);
  const rest = (entrySummaries.peek() ?? []).filter(({ id }) => !changed.has(id));
  const all = [...(fresh as EntrySummary[]).filter(listed), ...rest];
  entrySummaries.value = all.sort((x, y) =>
    x.changed < y.changed ? 1 : x.changed > y.changed ? -1 : 0,
  );
}

export const searchWords = signal('');
export const searchKind = signal<Kind | null>(null);
export const searchFrom = signal('');
export const searchTo = signal('');
export const searchPigments = signal<readonly string[]>([]);
export const searchColour = signal<Lab | null>(null);
/** Maximum CIEDE2000 difference of a search by colour. */
export const searchTolerance = signal(8);
export const searchOrder = signal<Sort | null>(null);
/** Show only entries with an unresolved conflict. */
export const onlyVersions = signal(false);

const searchQuery = computed(
  (): Query => ({
    words: searchWords.value,
    ...(searchKind.value ? { kinds: [searchKind.value] } : {}),
    ...(searchFrom.value ? { from: searchFrom.value } : {}),
    ...(searchTo.value ? { to: searchTo.value } : {}),
    pigments: searchPigments.value,
    ...(searchColour.value
      ? { colour: { lab: searchColour.value, within: searchTolerance.value } }
      : {}),
    ...(searchOrder.value && (searchOrder.value !== 'nearest' || searchColour.value)
      ? { sort: searchOrder.value }
      : {}),
  }),
);
export const isNarrowed = computed(
  () =>
    searchKind.value !== null ||
    searchFrom.value !== '' ||
    searchTo.value !== '' ||
    searchPigments.value.length > 0 ||
    searchColour.value !== null ||
    (onlyVersions.value && conflictIds.value.size > 0),
);

const index = computed(() => createSearchIndex(entrySummaries.value ?? []));
export const searchHits = computed((): readonly SearchHit[] => {
  const all = index.value.search(searchQuery.value);
  const isOnly = onlyVersions.value && conflictIds.value.size > 0;
  return isOnly ? all.filter(({ card }) => conflictIds.value.has(card.id)) : all;
});

/**
 * Pairs of versions in conflict, both outside the bin: the current version and its conflict copy.
 */
export const conflictPairs = computed((): readonly (readonly [id: string, beside: string])[] => {
  const all = entrySummaries.value ?? [];
  const besides = all.filter(({ conflictOf }) => conflictOf !== undefined);
  if (besides.length === 0) return [];
  const there = new Set(all.map(({ id }) => id));
  return besides.flatMap(({ id, conflictOf }) =>
    there.has(conflictOf!) ? [[conflictOf!, id] as const] : [],
  );
});
export const conflictIds = computed((): ReadonlySet<string> => new Set(conflictPairs.value.flat()));

export const kindsThere = computed((): readonly Kind[] => [
  ...new Set((entrySummaries.value ?? []).map((card) => card.kind)),
]);
export const pigmentsThere = computed((): readonly string[] =>
  [...new Set((entrySummaries.value ?? []).flatMap((card) => card.pigments))].sort(),
);

/** Maximum number of the book's colours to offer. */
const OFFERED = 28;
/** Edge length, in CIELAB units, of the cells by which colours are grouped. */
const COARSE = 18;

/** Representative colours of the book: one from each of the most frequent cells, ordered by hue. */
export const coloursThere = computed((): readonly Lab[] => {
  const cells = new Map<string, { readonly lab: Lab; count: number }>();
  for (const card of entrySummaries.value ?? [])
    for (const { lab } of card.colours) {
      const key = lab.map((value) => Math.round(value / COARSE)).join(' ');
      const cell = cells.get(key);
      if (cell) cell.count++;
      else cells.set(key, { lab, count: 1 });
    }
  return [...cells.values()]
    .sort((x, y) => y.count - x.count)
    .slice(0, OFFERED)
    .map(({ lab }) => lab)
    .sort((x, y) => Math.atan2(x[2], x[1]) - Math.atan2(y[2], y[1]) || y[0] - x[0]);
});

export function clearSearch(): void {
  searchWords.value = '';
  searchKind.value = null;
  searchFrom.value = '';
  searchTo.value = '';
  searchPigments.value = [];
  searchColour.value = null;
  searchOrder.value = null;
  onlyVersions.value = false;
}

/** Scroll position of the list, in CSS pixels, when an entry was opened over it. */
export const scrolled = { y: 0 };
