import { computed, signal } from '@preact/signals';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { STUDIO_PALETTE } from '../../book/palette.ts';
import type { Kind } from '../../book/record.ts';
import { createIndex, type Found, type Query, type Sort } from '../../book/search.ts';
import type { Book } from '../../book/store.ts';
import type { Lab } from '../../colour/lab.ts';
import { complain, opening } from '../studio.ts';

/** False for the shelf and the studio's own palette, which have their own places. */
const listed = ({ id, kind }: Card): boolean => kind !== 'shelf' && id !== STUDIO_PALETTE;

/** All entries outside the bin, most recently changed first; null until they are read. */
export const cards = signal<readonly Card[] | null>(null);

/** A change of more entries than this reads the whole list again. */
const FEW = 40;
let wanted = false;

/** Loads the list when a screen first needs it, and keeps it up to date afterwards. */
export function wantCards(): void {
  if (wanted) return;
  wanted = true;
  void opening.then((book) => {
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
  if (list.ok) cards.value = list.value.filter(listed);
  else complain(bookFaultWords(list.fault));
}

async function readSome(book: Book, ids: readonly string[]): Promise<void> {
  const read = await book.ledger.read(['cards'], (transaction) =>
    Promise.all(ids.map((id) => transaction.objectStore('cards').get(id))),
  );
  if (!read.ok) return complain(bookFaultWords(read.fault));
  const fresh = read.value.filter((card) => card !== undefined && card.deletedAt === undefined);
  const changed = new Set(ids);
  const rest = (cards.peek() ?? []).filter(({ id }) => !changed.has(id));
  const all = [...(fresh as Card[]).filter(listed), ...rest];
  cards.value = all.sort((x, y) => (x.changed < y.changed ? 1 : x.changed > y.changed ? -1 : 0));
}

export const words = signal('');
export const kind = signal<Kind | null>(null);
export const from = signal('');
export const to = signal('');
export const pigments = signal<readonly string[]>([]);
export const colour = signal<Lab | null>(null);
/** Maximum CIEDE2000 difference of a search by colour. */
export const within = signal(8);
export const sort = signal<Sort | null>(null);
/** Show only entries with an unresolved conflict. */
export const onlyVersions = signal(false);

export const query = computed(
  (): Query => ({
    words: words.value,
    ...(kind.value ? { kinds: [kind.value] } : {}),
    ...(from.value ? { from: from.value } : {}),
    ...(to.value ? { to: to.value } : {}),
    pigments: pigments.value,
    ...(colour.value ? { colour: { lab: colour.value, within: within.value } } : {}),
    ...(sort.value && (sort.value !== 'nearest' || colour.value) ? { sort: sort.value } : {}),
  }),
);
export const isNarrowed = computed(
  () =>
    kind.value !== null ||
    from.value !== '' ||
    to.value !== '' ||
    pigments.value.length > 0 ||
    colour.value !== null ||
    (onlyVersions.value && versions.value.size > 0),
);

const index = computed(() => createIndex(cards.value ?? []));
export const found = computed((): readonly Found[] => {
  const all = index.value.search(query.value);
  const isOnly = onlyVersions.value && versions.value.size > 0;
  return isOnly ? all.filter(({ card }) => versions.value.has(card.id)) : all;
});

/**
 * Pairs of versions in conflict, both outside the bin: the current version and its conflict copy.
 */
export const pairs = computed((): readonly (readonly [id: string, beside: string])[] => {
  const all = cards.value ?? [];
  const besides = all.filter(({ conflictOf }) => conflictOf !== undefined);
  if (besides.length === 0) return [];
  const there = new Set(all.map(({ id }) => id));
  return besides.flatMap(({ id, conflictOf }) =>
    there.has(conflictOf!) ? [[conflictOf!, id] as const] : [],
  );
});
export const versions = computed((): ReadonlySet<string> => new Set(pairs.value.flat()));

export const kindsThere = computed((): readonly Kind[] => [
  ...new Set((cards.value ?? []).map((card) => card.kind)),
]);
export const pigmentsThere = computed((): readonly string[] =>
  [...new Set((cards.value ?? []).flatMap((card) => card.pigments))].sort(),
);

/** Maximum number of the book's colours to offer. */
const OFFERED = 28;
/** Edge length, in CIELAB units, of the cells by which colours are grouped. */
const COARSE = 18;

/** Representative colours of the book: one from each of the most frequent cells, ordered by hue. */
export const coloursThere = computed((): readonly Lab[] => {
  const cells = new Map<string, { readonly lab: Lab; count: number }>();
  for (const card of cards.value ?? [])
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
  words.value = '';
  kind.value = null;
  from.value = '';
  to.value = '';
  pigments.value = [];
  colour.value = null;
  sort.value = null;
  onlyVersions.value = false;
}

/** Scroll position of the list, in CSS pixels, when an entry was opened over it. */
export const scrolled = { y: 0 };
