import type { Entry } from '../../../book/schema/record.ts';
import { deltaE00 } from '../../../colour/difference.ts';
import type { Lab } from '../../../colour/lab.ts';
import { dateWords } from '../../state/locale-format.ts';
import { bookTexts, KIND_WORDS } from '../../texts/book-texts.ts';
import { type EntryItem, entryItems } from './entry-text.ts';

/** One version's value; `words` is empty when it has none. */
export interface Side {
  readonly words: string;
  readonly lab: Lab | null;
}
/** One difference between two versions of an entry. */
export interface VersionDifference {
  readonly what: string;
  readonly sides: readonly [Side, Side];
  /** CIEDE2000 when both sides have a colour and the colours differ, otherwise null. */
  readonly deltaE00: number | null;
}

/**
 * Lists the differences between two versions of one entry: first the fields that have a label on
 * the screens, then the items of their contents, matched by name.
 * @param label formats a pigment's name for the reader
 */
export function differencesOf(
  one: Entry,
  other: Entry,
  label: (pigment: string) => string,
): readonly VersionDifference[] {
  return [...fieldsOf(one, other), ...linesOf(one, other, label)];
}

function fieldsOf(one: Entry, other: Entry): VersionDifference[] {
  const [mine, theirs] = [one.body, other.body] as unknown as Record<string, unknown>[];
  return Object.entries(bookTexts.fields).flatMap(([key, what]) => {
    const [x, y] = [said(key, mine![key]), said(key, theirs![key])];
    if (x === y) return [];
    return [{ what, sides: [side(x), side(y)], deltaE00: null }];
  });
}

const side = (words: string, lab: Lab | null = null): Side => ({ words, lab });

function said(key: string, value: unknown): string {
  if (typeof value === 'boolean') return value ? bookTexts.yes : bookTexts.no;
  if (typeof value !== 'string') return '';
  return key === 'date' ? dateWords(value) : value;
}

interface Named {
  readonly what: string;
  readonly line: EntryItem;
}

function linesOf(
  one: Entry,
  other: Entry,
  label: (pigment: string) => string,
): VersionDifference[] {
  // An item that has the entry's own name is labelled with the kind; a changed name is already
  // reported as a field.
  const called = ({ kind, body }: Entry, name: string) =>
    name === body.name ? KIND_WORDS[kind] : name;
  const all = (entry: Entry): Named[] =>
    entryItems(entry, label).flatMap(({ heading, lines }) =>
      lines.map((line) => ({
        what: [heading, called(entry, line.name)].filter(Boolean).join(': '),
        line,
      })),
    );
  const mine = all(one);
  const theirs = all(other);
  const pairs: (readonly [Named | null, Named | null])[] = [];
  // Match items by name first, then pair the remaining ones in order.
  const leftMine: Named[] = [];
  for (const named of mine) {
    const at = theirs.findIndex(({ what }) => what === named.what);
    if (at < 0) leftMine.push(named);
    else pairs.push([named, theirs.splice(at, 1)[0]!]);
  }
  for (let i = 0; i < Math.max(leftMine.length, theirs.length); i++)
    pairs.push([leftMine[i] ?? null, theirs[i] ?? null]);
  return pairs.flatMap(([x, y]) => {
    const isSameName = x?.what === y?.what;
    const sides: readonly [Side, Side] = [sideOf(x, !isSameName), sideOf(y, !isSameName)];
    const apart = x?.line.lab && y?.line.lab ? deltaE00(x.line.lab, y.line.lab) : 0;
    if (sides[0].words === sides[1].words && apart < 0.05) return [];
    const what = (x ?? y)!.what;
    return [{ what, sides, deltaE00: apart < 0.05 ? null : apart }];
  });
}

const sideOf = (named: Named | null, withName: boolean): Side =>
  named
    ? side([...(withName ? [named.what] : []), ...named.line.words].join(' · '), named.line.lab)
    : side('');
