import type { Lab } from '../colour/lab.ts';
import table from './data/period.json' with { type: 'json' };
import { type Declared, kindOf, type PeriodKind } from './period-family.ts';

/** What period practice held of a pair. Pairs without a row were not mentioned. */
export type PeriodVerdict = 'held' | 'seldom' | 'held; disputed' | 'held, single report';

/** One row of the table of pairs. */
export interface PeriodRow {
  readonly pair: readonly [string, string];
  readonly held: PeriodVerdict;
  /** `seen`: read in the named source; otherwise common practice, which has none. */
  readonly status: 'seen' | 'common practice';
  /** The source in full; null for common practice. */
  readonly source: string | null;
  /** Support or dissent, in a sentence; may be empty. */
  readonly note: string;
}

const HELD: readonly string[] = ['held', 'seldom', 'held; disputed', 'held, single report'];

/**
 * Every row, in the order of the table. Words and sources are checked at load.
 * @throws RangeError at load for an unknown word, status or source
 */
export const PERIOD_PAIRS: readonly PeriodRow[] = table.pairs.map(
  ({ pair, held, status, by, note }) => {
    if (pair.length !== 2 || !HELD.includes(held))
      throw new RangeError(`a pair of ${pair} is ${held}`);
    if (status !== 'seen' && status !== 'common practice') throw new RangeError(`status ${status}`);
    const source = by === null ? null : (table.sources as Record<string, string>)[by];
    if (source === undefined) throw new RangeError(`no source ${by}`);
    return { pair: [pair[0]!, pair[1]!], held: held as PeriodVerdict, status, source, note };
  },
);

const chromatic = ({ family }: PeriodKind): boolean => !['white', 'black', 'grey'].includes(family);

/** Whether a colour matches a word of the table; `other` is the colour beside it. */
const MATCHES: Record<string, (kind: PeriodKind, other: PeriodKind) => boolean> = {
  any: () => true,
  white: ({ family }) => family === 'white',
  black: ({ family }) => family === 'black',
  brown: ({ family }) => family === 'brown',
  'earth red': ({ earthRed }) => earthRed,
  'earth yellow': ({ earthYellow }) => earthYellow,
  'any other hue': (kind) =>
    chromatic(kind) && kind.family !== 'brown' && !kind.earthRed && !kind.earthYellow,
  blue: ({ family }) => family === 'blue',
  green: ({ family }) => family === 'green',
  orange: ({ family }) => family === 'orange',
  pink: ({ family }) => family === 'pink',
  purple: ({ family }) => family === 'purple',
  red: ({ family }) => family === 'red',
  yellow: ({ family }) => family === 'yellow',
  'pale yellow': ({ family, pale }) => family === 'yellow' && pale,
  'pale green': ({ family, pale }) => family === 'green' && pale,
  'lavender (pale)': (kind) =>
    (kind.family === 'purple' || (kind.family === 'blue' && kind.greyViolet)) && kind.pale,
  'grey-violet (dark)': ({ greyViolet, dark }) => greyViolet && dark,
  'light of one family': (kind, other) => kind.light && apart(kind, other),
  'dark of another': (kind, other) => kind.dark && apart(kind, other),
};

const apart = (one: PeriodKind, other: PeriodKind): boolean =>
  one.family !== other.family && chromatic(one) && chromatic(other);

/** Sort order: rows about many colours come after rows that name the pair. */
const general = ({ pair }: PeriodRow): number =>
  pair.includes('light of one family') ? 2 : pair.includes('any') ? 1 : 0;
/** Number of narrowing words in a row: the narrower row comes first. */
const narrow = ({ pair }: PeriodRow): number =>
  pair.filter((word) => /pale|earth|dark/.test(word)).length;

/**
 * Every row that applies to a pair of colours, the most specific first; empty if practice was
 * silent. Information only: it forbids nothing and selects nothing.
 */
export function periodOf(
  one: Lab,
  other: Lab,
  declared: readonly [Declared | null, Declared | null] = [null, null],
): readonly PeriodRow[] {
  const [x, y] = [kindOf(one, declared[0]), kindOf(other, declared[1])];
  return PERIOD_PAIRS.filter(({ pair }) => {
    const [p, q] = [MATCHES[pair[0]]!, MATCHES[pair[1]]!];
    return (p(x, y) && q(y, x)) || (p(y, x) && q(x, y));
  }).toSorted((a, b) => general(a) - general(b) || narrow(b) - narrow(a));
}
