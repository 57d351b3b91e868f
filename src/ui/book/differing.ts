import type { Entry } from '../../book/record.ts';
import { deltaE00 } from '../../colour/difference.ts';
import type { Lab } from '../../colour/lab.ts';
import { dateWords } from '../locale.ts';
import { KIND_WORDS, sayBook } from '../words/book.ts';
import { contentsOf, type Line } from './contents.ts';

/** How one side says something; words are empty where it says nothing. */
export interface Side {
  readonly words: string;
  readonly lab: Lab | null;
}
/** Something that two versions of an entry say otherwise. */
export interface Difference {
  readonly what: string;
  readonly sides: readonly [Side, Side];
  /** CIEDE2000 where both have a colour, and it is not the same. */
  readonly deltaE00: number | null;
}

/**
 * What two versions of one entry say otherwise, in words and colours: the fields that have a name on
 * the screens, then the lines of what it holds, each beside its namesake.
 */
export function differencesOf(
  one: Entry,
  other: Entry,
  label: (pigment: string) => string,
): readonly Difference[] {
  return [...fieldsOf(one, other), ...linesOf(one, other, label)];
}

function fieldsOf(one: Entry, other: Entry): Difference[] {
  const [mine, theirs] = [one.body, other.body] as unknown as Record<string, unknown>[];
  return Object.entries(sayBook.fields).flatMap(([key, what]) => {
    const [x, y] = [said(key, mine![key]), said(key, theirs![key])];
    if (x === y) return [];
    return [{ what, sides: [side(x), side(y)], deltaE00: null }];
  });
}

const side = (words: string, lab: Lab | null = null): Side => ({ words, lab });

function said(key: string, value: unknown): string {
  if (typeof value === 'boolean') return value ? sayBook.yes : sayBook.no;
  if (typeof value !== 'string') return '';
  return key === 'date' ? dateWords(value) : value;
}

interface Named {
  readonly what: string;
  readonly line: Line;
}

function linesOf(one: Entry, other: Entry, label: (pigment: string) => string): Difference[] {
  // Where the one line of an entry bears its name, the name is told of already.
  const called = ({ kind, body }: Entry, name: string) =>
    name === body.name ? KIND_WORDS[kind] : name;
  const all = (entry: Entry): Named[] =>
    contentsOf(entry, label).flatMap(({ heading, lines }) =>
      lines.map((line) => ({
        what: [heading, called(entry, line.name)].filter(Boolean).join(': '),
        line,
      })),
    );
  const mine = all(one);
  const theirs = all(other);
  const pairs: (readonly [Named | null, Named | null])[] = [];
  // Namesakes first; what is left over stands beside what is left over on the other side.
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
