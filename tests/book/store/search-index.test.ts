import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EntrySummary } from '../../../src/book/schema/entry-summary.ts';
import { foldText } from '../../../src/book/schema/fold-text.ts';
import { createColourIndex } from '../../../src/book/store/colour-index.ts';
import { createSearchIndex, type Query } from '../../../src/book/store/search-index.ts';
import { deltaE00 } from '../../../src/colour/difference.ts';
import type { Lab } from '../../../src/colour/lab.ts';
import { evenly } from '../../evenly.ts';
import { NOON } from '../made.ts';

/** The same numbers in every run. */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const PIGMENTS = [
  'lead-white',
  'yellow-ochre',
  'red-earth',
  'azurite',
  'bone-black',
  'madder-lake',
];
const NOUNS = [
  'lane',
  'mill',
  'heron',
  'Äpfel',
  'rowan',
  'wall',
  'jay',
  'sluice',
  'meadow',
  'frost',
];

/** A book of harmonies as a studio may have it: colours in clumps, words few and often repeated. */
function cardsOf(count: number): EntrySummary[] {
  const random = randoms(11);
  const some = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
  return Array.from({ length: count }, (_, i) => {
    const name = `${some(NOUNS)} ${i}`;
    const changed = new Date(NOON + i * 3_600_000).toISOString();
    const colours = Array.from({ length: 5 }, () => {
      const lab = [15 + 80 * random(), 60 * (random() - 0.4), 80 * (random() - 0.35)] as const;
      return { lab, share: 0.2 };
    });
    const pigments = [...new Set([some(PIGMENTS), some(PIGMENTS), some(PIGMENTS)])];
    return {
      id: `entry-${String(i).padStart(6, '0')}`,
      kind: i % 4 === 0 ? 'specimen' : 'harmony',
      name,
      words: foldText([name, 'seen from the bank', ...pigments].join('\n')),
      date: changed.slice(0, 10),
      changed,
      colours,
      pigments,
      files: [],
    };
  });
}

const cards = cardsOf(2000);
const index = createSearchIndex(cards);
const ids = (query: Query) => index.search(query).map(({ card }) => card.id);
const scan = (keep: (card: EntrySummary) => boolean) => cards.filter(keep).map(({ id }) => id);
const sorted = (list: readonly string[]) => [...list].sort();

describe('finds by', () => {
  test('words, in any order, by their beginnings, without accents', () => {
    expect(ids({ words: 'apfel' }).length).toBeGreaterThan(100);
    expect(sorted(ids({ words: 'apfel' }))).toEqual(scan(({ name }) => name.startsWith('Äpfel')));
    expect(ids({ words: 'BANK  apfel 17' }).length).toBeGreaterThan(0);
    expect(ids({ words: 'pfel' })).toEqual([]);
    expect(ids({ words: '  ' }).length).toBe(2000);
  });

  test('kind, day and pigment together', () => {
    const query = { kinds: ['harmony'], from: '2031-05-20', to: '2031-06-02' } as const;
    const found = ids({ ...query, pigments: ['azurite', 'bone-black'], words: 'heron' });
    const wanted = scan(
      ({ kind, date, pigments, name }) =>
        kind === 'harmony' &&
        date >= '2031-05-20' &&
        date <= '2031-06-02' &&
        pigments.includes('azurite') &&
        pigments.includes('bone-black') &&
        name.startsWith('heron'),
    );
    expect(found.length).toBeGreaterThan(0);
    expect(sorted(found)).toEqual(wanted);
    expect(ids({ pigments: ['constructor'] })).toEqual([]);
  });

  test('colour, nearest first, as a plain scan would', () => {
    const lab: Lab = [48, 21, 33];
    const nearest = ({ colours }: EntrySummary) =>
      Math.min(...colours.map((colour) => deltaE00(lab, colour.lab)));
    const found = index.search({ colour: { lab, within: 4 } });
    expect(found.length).toBeGreaterThan(5);
    expect(sorted(found.map(({ card }) => card.id))).toEqual(scan((card) => nearest(card) <= 4));
    for (const { card, deltaE00 } of found) expect(deltaE00).toBe(nearest(card));
    const differences = found.map(({ deltaE00 }) => deltaE00);
    expect(differences).toEqual(differences.toSorted((x, y) => x! - y!));
  });
});

test('sorts', () => {
  expect(ids({})[0]).toBe('entry-001999');
  expect(ids({ sort: 'oldest' })[0]).toBe('entry-000000');
  expect(ids({ sort: 'by date' })[0]).toBe('entry-001999');
  const names = index.search({ sort: 'by name', words: 'jay' }).map(({ card }) => card.name);
  expect(names[0]).toMatch(/^jay \d+$/);
  const numbers = names.map((name) => Number(name.slice(4)));
  expect(numbers).toEqual(numbers.toSorted((x, y) => x - y));
});

describe('cells', () => {
  // To nine digits: what the formula does with chromas of 1e-160 is not the index's matter.
  const axis = fc
    .double({ min: -120, max: 120, noNaN: true })
    .map((value) => Math.round(value * 1e9) / 1e9);
  const lab = fc.tuple(evenly(0, 100), axis, axis);

  test('never hide a colour that is near enough, in the blues and at the ends least of all', () => {
    const random = randoms(5);
    const between = (from: number, to: number) => from + (to - from) * random();
    const counted = { near: 0, far: 0 };
    fc.assert(
      fc.property(lab, evenly(0, 12), (query, within) => {
        const colours = Array.from({ length: 60 }, (_, owner) => {
          const reach = between(0, 40);
          const near = query.map((value) => value + between(-reach, reach)) as unknown as Lab;
          return { lab: near, owner };
        });
        const found: number[] = [];
        createColourIndex(colours).near(query, within, (owner) => found.push(owner));
        const wanted = colours.filter((colour) => deltaE00(query, colour.lab) <= within);
        counted.near += wanted.length;
        counted.far += colours.length - wanted.length;
        expect(found.sort((x, y) => x - y)).toEqual(wanted.map(({ owner }) => owner));
      }),
      { numRuns: process.env.KINGCUP_SOAK === '1' ? 20_000 : 400, seed: 3 },
    );
    expect(counted.near).toBeGreaterThan(1000);
    expect(counted.far).toBeGreaterThan(1000);
  });

  test('find a colour at exactly its own difference, however the valley lies', () => {
    // Where hue and chroma differences weigh against each other: the blues.
    const blue = fc
      .tuple(evenly(5, 95), evenly(10, 130), evenly(240, 310))
      .map(([L, C, h]): Lab => {
        const turn = (h * Math.PI) / 180;
        return [L, C * Math.cos(turn), C * Math.sin(turn)];
      });
    const either = fc.oneof(blue, blue, lab);
    fc.assert(
      fc.property(either, either, (one, other) => {
        const within = deltaE00(one, other);
        let found = 0;
        createColourIndex([{ lab: other, owner: 0 }]).near(one, within, () => found++);
        expect(found).toBe(1);
      }),
      { numRuns: process.env.KINGCUP_SOAK === '1' ? 100_000 : 3000, seed: 8 },
    );
  });

  test('look at a small share of 10,000 harmonies', () => {
    const colours = cardsOf(10_000).flatMap((card, owner) =>
      card.colours.map((colour) => ({ lab: colour.lab, owner })),
    );
    const cells = createColourIndex(colours);
    let found = 0;
    cells.near([52, 8, 14], 2, () => found++);
    expect(found).toBeGreaterThan(0);
    expect(cells.looked / colours.length).toBeLessThan(0.05);
  });
});

test('an empty book is searched without ado', () => {
  const query = { words: 'x', colour: { lab: [50, 0, 0] as const, within: 3 } };
  expect(createSearchIndex([]).search(query)).toEqual([]);
});
