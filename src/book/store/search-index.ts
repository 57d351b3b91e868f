import type { Lab } from '../../colour/lab.ts';
import type { EntrySummary } from '../schema/entry-summary.ts';
import { foldText } from '../schema/fold-text.ts';
import type { Kind } from '../schema/record.ts';
import { type ColourIndex, createColourIndex } from './colour-index.ts';

/** Search criteria; an entry must meet all that are present. */
export interface Query {
  /**
   * Each must be a prefix of some word of the entry, in any order; accents and case are ignored.
   */
  readonly words?: string;
  readonly kinds?: readonly Kind[];
  /** ISO dates, both inclusive. */
  readonly from?: string;
  readonly to?: string;
  /** All of these must occur in the chosen mixtures. */
  readonly pigments?: readonly string[];
  readonly colour?: { readonly lab: Lab; readonly within: number };
  /**
   * Default: "nearest" when `colour` is present, otherwise "newest". "nearest" requires a colour.
   */
  readonly sort?: Sort;
}
export const SORTS = ['newest', 'oldest', 'by date', 'by name', 'nearest'] as const;
export type Sort = (typeof SORTS)[number];

export interface SearchHit {
  readonly card: EntrySummary;
  /** CIEDE2000 to the nearest of the entry's colours; null when the query has no colour. */
  readonly deltaE00: number | null;
}

interface SearchIndex {
  search(query: Query): readonly SearchHit[];
  readonly size: number;
}

/**
 * Builds a search index over summaries; rebuild it when the book changes. Words and pigments are
 * matched in the summaries, colours in cells of CIELAB. Photographs are never read.
 */
export function createSearchIndex(cards: readonly EntrySummary[]): SearchIndex {
  const byPigment = new Map<string, Set<number>>();
  cards.forEach(({ pigments }, i) => {
    for (const pigment of pigments) {
      const held = byPigment.get(pigment);
      if (held) held.add(i);
      else byPigment.set(pigment, new Set([i]));
    }
  });
  // Built at the first query with a colour, so that opening a list does not wait for it.
  let cells: ColourIndex | null = null;
  const near = (lab: Lab, within: number): Map<number, number> => {
    cells ??= createColourIndex(
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
      const words = foldText(query.words ?? '')
        .split(/\s+/)
        .filter(Boolean);
      const differences = colour ? near(colour.lab, colour.within) : null;
      const used = pigments.map((pigment) => byPigment.get(pigment) ?? new Set<number>());
      const found: SearchHit[] = [];
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

/** True when any word of the text starts with `beginning`. */
function hasWord(text: string, beginning: string): boolean {
  for (let at = text.indexOf(beginning); at >= 0; at = text.indexOf(beginning, at + 1))
    if (at === 0 || !LETTER.test(text[at - 1]!)) return true;
  return false;
}
const LETTER = /[\p{L}\p{N}]/u;

const compare = (x: string, y: string): number => (x < y ? -1 : x > y ? 1 : 0);
const newest = (x: SearchHit, y: SearchHit): number =>
  compare(y.card.changed, x.card.changed) || compare(x.card.id, y.card.id);
const inWords = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

const ORDERS: Readonly<Record<Sort, (x: SearchHit, y: SearchHit) => number>> = {
  newest,
  oldest: (x, y) => newest(y, x),
  'by date': (x, y) => compare(y.card.date, x.card.date) || newest(x, y),
  'by name': (x, y) => inWords.compare(x.card.name, y.card.name) || newest(x, y),
  nearest: (x, y) => (x.deltaE00 ?? 0) - (y.deltaE00 ?? 0) || newest(x, y),
};
