import type { Lab } from '../colour/lab.ts';
import type { Card } from './card.ts';
import { type Cells, createCells } from './cells.ts';
import { folded } from './folded.ts';
import type { Kind } from './record.ts';

/** What the painter looks for; everything that is given must hold. */
export interface Query {
  /** Every word must occur, in any order, whatever its accents and capitals; a beginning is enough. */
  readonly words?: string;
  readonly kinds?: readonly Kind[];
  /** ISO days, both included. */
  readonly from?: string;
  readonly to?: string;
  /** Every one of these in the mixtures chosen. */
  readonly pigments?: readonly string[];
  readonly colour?: { readonly lab: Lab; readonly within: number };
  /** "nearest" needs a colour, and is what a search by colour gives unless told otherwise. */
  readonly sort?: Sort;
}
export const SORTS = ['newest', 'oldest', 'by date', 'by name', 'nearest'] as const;
export type Sort = (typeof SORTS)[number];

export interface Found {
  readonly card: Card;
  /** CIEDE2000 to the nearest of its colours; null where no colour was asked for. */
  readonly deltaE00: number | null;
}

export interface SearchIndex {
  search(query: Query): readonly Found[];
  readonly size: number;
}

/**
 * An index over cards, made once and used until the book changes: words and pigments are looked up in
 * what the cards hold ready, colours in cells of CIELAB, and photographs are never touched.
 */
export function createIndex(cards: readonly Card[]): SearchIndex {
  const byPigment = new Map<string, Set<number>>();
  cards.forEach(({ pigments }, i) => {
    for (const pigment of pigments) {
      const held = byPigment.get(pigment);
      if (held) held.add(i);
      else byPigment.set(pigment, new Set([i]));
    }
  });
  // The cells are made when a colour is first asked for: opening a list never waits for them.
  let cells: Cells | null = null;
  const near = (lab: Lab, within: number): Map<number, number> => {
    cells ??= createCells(
      cards.flatMap(({ colours }, owner) => colours.map((colour) => ({ lab: colour.lab, owner }))),
    );
    const nearest = new Map<number, number>();
    cells.near(lab, within, (owner, difference) => {
      if (difference < (nearest.get(owner) ?? Number.POSITIVE_INFINITY))
        nearest.set(owner, difference);
    });
    return nearest;
  };

  return {
    size: cards.length,
    search(query) {
      const { kinds, from, to, pigments = [], colour } = query;
      const words = folded(query.words ?? '')
        .split(/\s+/)
        .filter(Boolean);
      const differences = colour ? near(colour.lab, colour.within) : null;
      const used = pigments.map((pigment) => byPigment.get(pigment) ?? new Set<number>());
      const found: Found[] = [];
      const look = (i: number) => {
        const card = cards[i]!;
        const day = card.date.slice(0, 10);
        if (kinds && !kinds.includes(card.kind)) return;
        if ((from !== undefined && day < from) || (to !== undefined && day > to)) return;
        if (!used.every((users) => users.has(i))) return;
        if (!words.every((word) => hasWord(card.words, word))) return;
        found.push({ card, deltaE00: differences?.get(i) ?? null });
      };
      if (differences) for (const i of differences.keys()) look(i);
      else for (let i = 0; i < cards.length; i++) look(i);
      return found.sort(ORDERS[query.sort ?? (colour ? 'nearest' : 'newest')]);
    },
  };
}

/** True when a word of the text begins so. */
function hasWord(text: string, beginning: string): boolean {
  for (let at = text.indexOf(beginning); at >= 0; at = text.indexOf(beginning, at + 1))
    if (at === 0 || !LETTER.test(text[at - 1]!)) return true;
  return false;
}
const LETTER = /[\p{L}\p{N}]/u;

const compare = (x: string, y: string): number => (x < y ? -1 : x > y ? 1 : 0);
const newest = (x: Found, y: Found): number =>
  compare(y.card.changed, x.card.changed) || compare(x.card.id, y.card.id);
const inWords = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

const ORDERS: Readonly<Record<Sort, (x: Found, y: Found) => number>> = {
  newest,
  oldest: (x, y) => newest(y, x),
  'by date': (x, y) => compare(y.card.date, x.card.date) || newest(x, y),
  'by name': (x, y) => inWords.compare(x.card.name, y.card.name) || newest(x, y),
  nearest: (x, y) => (x.deltaE00 ?? 0) - (y.deltaE00 ?? 0) || newest(x, y),
};
