import { computed, signal } from '@preact/signals';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { STUDIO_PALETTE } from '../../book/palette.ts';
import type { Kind } from '../../book/record.ts';
import { createIndex, type Found, type Query, type Sort } from '../../book/search.ts';
import type { Book } from '../../book/store.ts';
import type { Lab } from '../../colour/lab.ts';
import { complain, opening } from '../studio.ts';

/** The shelf and the studio's own palette have places of their own. */
const listed = ({ id, kind }: Card): boolean => kind !== 'shelf' && id !== STUDIO_PALETTE;

/** Every entry outside the bin, last changed first; null until they are read. */
export const cards = signal<readonly Card[] | null>(null);

/** A change of so many entries reads the whole list anew. */
const FEW = 40;
let wanted = false;

/** Reads the list when a screen first needs it, and follows the book from then on. */
export function wantCards(): void {
  if (wanted) return;
  wanted = true;
  void opening.then((book) => {
    if (!book) return;
    let last = readAll(book);
    // One after the other: an older answer must not cover a newer one.
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
/** CIEDE2000. */
export const within = signal(8);
export const sort = signal<Sort | null>(null);
/** Only entries that are kept in two versions. */
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

/** Entries of which two versions are outside the bin: the version in force, and the one beside it. */
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

/** How many of the book's own colours are offered. */
const OFFERED = 28;
/** Edge of the cells that colours are gathered in, in units of CIELAB. */
const COARSE = 18;

/** Colours that stand for those of the book: one of each sort that occurs, the commonest sorts. */
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

/** Where the list stood when an entry was opened over it. */
export const scrolled = { y: 0 };
