import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mergeBooks, previewMerge, toConflictCopy } from '../../../src/book/merge/merge-books.ts';
import {
  deleted,
  nextVersionMetadata,
  purged,
  restored,
} from '../../../src/book/merge/next-version.ts';
import { START } from '../../../src/book/schema/hybrid-clock.ts';
import { type AnyRecord, readRecord } from '../../../src/book/schema/record.ts';
import { harmonyBodyOf, NOON } from '../made.ts';

const RUNS = process.env.KINGCUP_SOAK === '1' ? 5000 : 200;

/** A studio's devices, each with its own book and its own idea of the time, and what was written. */
class Studio {
  readonly books: Map<string, AnyRecord>[] = [];
  private readonly clocks: string[] = [];
  /** For every text written: the texts that its writer had before them. */
  readonly histories = new Map<string, ReadonlySet<string>>();
  readonly cleared = new Set<string>();
  private made = 0;

  constructor(devices: number) {
    for (let i = 0; i < devices; i++) {
      this.books.push(new Map());
      this.clocks.push(START);
    }
  }

  private marks(device: number, wall: number, known: readonly AnyRecord[]) {
    const marks = nextVersionMetadata(
      `device-${device}`,
      this.clocks[device]!,
      NOON + wall * 1000,
      known,
    );
    this.clocks[device] = marks.clock;
    return marks;
  }

  write(device: number, wall: number, before: AnyRecord | undefined) {
    const name = `text ${this.made++}`;
    const known = before ? [before] : [];
    const marks = this.marks(device, wall, known);
    const id = before?.id ?? `entry-${String(this.made).padStart(4, '0')}`;
    const body = harmonyBodyOf(name);
    const created = before?.created ?? marks.changed;
    const conflict = before?.conflict ? { conflict: before.conflict } : {};
    const record = { id, kind: 'harmony' as const, created, ...marks, ...conflict, body };
    this.books[device]!.set(id, record);
    const was = before ? nameOf(before) : null;
    this.histories.set(name, new Set(was ? [was, ...(this.histories.get(was) ?? [])] : []));
  }

  /** Two windows of one device: the second saves over what it never saw, and both are kept. */
  overtake(device: number, wall: number, before: AnyRecord) {
    this.write(device, wall, before);
    const other = this.books[device]!.get(before.id)!;
    const copy = { ...toConflictCopy(other), ...this.marks(device, wall, [other]) };
    this.books[device]!.set(copy.id, copy);
    const name = `text ${this.made++}`;
    const marks = this.marks(device, wall, [other, before]);
    const body = harmonyBodyOf(name);
    const conflict = before.conflict ? { conflict: before.conflict } : {};
    const { id, created } = before;
    this.books[device]!.set(id, { id, kind: 'harmony', created, ...marks, ...conflict, body });
    const was = nameOf(before);
    this.histories.set(name, new Set(was ? [was, ...(this.histories.get(was) ?? [])] : []));
  }

  step(step: Step) {
    const { device, wall, what, pick, from } = step;
    const book = this.books[device]!;
    const live = [...book.values()].filter((record) => record.purged === undefined);
    const chosen = live[pick % Math.max(1, live.length)];
    if (what === 'merge') {
      const merged = mergeBooks([...book.values()], [...this.books[from]!.values()]);
      this.books[device] = new Map(merged.map((record) => [record.id, record]));
    } else if (what === 'new' || !chosen) this.write(device, wall, undefined);
    else if (what === 'edit') this.write(device, wall, restored(chosen, marksOf(chosen)));
    else if (what === 'overtake') this.overtake(device, wall, restored(chosen, marksOf(chosen)));
    else if (what === 'delete')
      book.set(chosen.id, deleted(chosen, this.marks(device, wall, [chosen])));
    else if (what === 'restore')
      book.set(chosen.id, restored(chosen, this.marks(device, wall, [chosen])));
    else if (chosen.deletedAt !== undefined) {
      this.cleared.add(nameOf(chosen)!);
      book.set(chosen.id, purged(chosen));
    }
  }
}

const marksOf = ({ schema, changed, clock, device, seen }: AnyRecord) => ({
  ...{ schema, changed, clock, device, seen },
});
const nameOf = (record: AnyRecord): string | null => record.body?.name ?? null;

interface Step {
  readonly device: number;
  readonly from: number;
  readonly wall: number;
  readonly pick: number;
  readonly what: 'new' | 'edit' | 'delete' | 'restore' | 'purge' | 'merge' | 'overtake';
}
const DEVICES = 3;
const device = fc.nat({ max: DEVICES - 1 });
const step: fc.Arbitrary<Step> = fc.record({
  device,
  from: device,
  // Clocks far apart, standing still and set back.
  wall: fc.integer({ min: -5, max: 5 }),
  pick: fc.nat({ max: 20 }),
  what: fc.constantFrom(
    ...(['new', 'edit', 'edit', 'edit', 'delete', 'restore', 'purge', 'overtake'] as const),
    ...(['merge', 'merge', 'merge'] as const),
  ),
});
const story = fc.array(step, { minLength: 3, maxLength: 40 });

/** Plays a story; answers with the devices' books at the end and at one earlier moment. */
function play(steps: readonly Step[]) {
  const studio = new Studio(DEVICES);
  const halfway: (readonly AnyRecord[])[] = [];
  steps.forEach((one, i) => {
    if (i === steps.length >> 1) halfway.push(...studio.books.map((book) => [...book.values()]));
    studio.step(one);
  });
  return { studio, books: [...studio.books.map((book) => [...book.values()]), ...halfway] };
}

describe('merging', () => {
  const pick = fc.nat({ max: 2 * DEVICES - 1 });

  test('gives the same in any order, in any grouping, any number of times', () => {
    const counted = { several: 0, conflicts: 0 };
    fc.assert(
      fc.property(story, pick, pick, pick, (steps, i, j, k) => {
        const { books } = play(steps);
        const [x, y, z] = [books[i]!, books[j]!, books[k]!];
        expect(mergeBooks(x, y)).toEqual(mergeBooks(y, x));
        expect(mergeBooks(mergeBooks(x, y), z)).toEqual(mergeBooks(x, mergeBooks(y, z)));
        expect(mergeBooks(x, y, z)).toEqual(mergeBooks(x, mergeBooks(y, z)));
        expect(mergeBooks(mergeBooks(x, y), y)).toEqual(mergeBooks(x, y));
        expect(mergeBooks(x, x)).toEqual(mergeBooks(x));
        const merged = mergeBooks(x, y, z);
        counted.several += Number(merged.length > 2);
        counted.conflicts += Number(merged.some(({ conflict }) => conflict));
      }),
      { numRuns: RUNS, seed: 9 },
    );
    expect(counted.several).toBeGreaterThan(RUNS / 4);
    expect(counted.conflicts).toBeGreaterThan(RUNS / 4);
  });

  test('gives the same for copies of a few entries only', () => {
    const some = fc.array(fc.boolean(), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(story, pick, pick, pick, some, some, some, (steps, i, j, k, ...wanted) => {
        const { books } = play(steps);
        const [x, y, z] = [i, j, k].map((which, n) =>
          books[which]!.filter((_, index) => wanted[n]![index % 30]),
        ) as [AnyRecord[], AnyRecord[], AnyRecord[]];
        expect(mergeBooks(x, y)).toEqual(mergeBooks(y, x));
        expect(mergeBooks(mergeBooks(x, y), z)).toEqual(mergeBooks(x, mergeBooks(y, z)));
        const ids = new Set(mergeBooks(x, y).map(({ id }) => id));
        // An entry is never without a version of its own; only an untouched conflict copy may go.
        for (const { id, conflict } of [...x, ...y]) if (!conflict) expect(ids).toContain(id);
      }),
      { numRuns: RUNS, seed: 13 },
    );
  });

  test('changes nothing in a book that met itself', () => {
    fc.assert(
      fc.property(story, (steps) => {
        for (const book of play(steps).books)
          expect(mergeBooks(book)).toEqual(book.toSorted((x, y) => (x.id < y.id ? -1 : 1)));
      }),
      { numRuns: RUNS, seed: 10 },
    );
  });

  test('loses no text that nobody wrote over or cleared from the bin', () => {
    let counted = 0;
    fc.assert(
      fc.property(story, (steps) => {
        const { studio } = play(steps);
        const merged = mergeBooks(...studio.books.map((book) => [...book.values()]));
        const kept = new Set(merged.map(nameOf));
        const old = new Set([...studio.histories.values()].flatMap((before) => [...before]));
        for (const name of studio.histories.keys()) {
          if (old.has(name) || studio.cleared.has(name)) continue;
          counted++;
          expect(kept).toContain(name);
        }
      }),
      { numRuns: RUNS, seed: 11 },
    );
    expect(counted).toBeGreaterThan(3 * RUNS);
  });

  test('makes only entries that the book accepts', () => {
    fc.assert(
      fc.property(story, (steps) => {
        const { books } = play(steps);
        for (const record of mergeBooks(...books)) expect(readRecord(record).ok).toBe(true);
      }),
      { numRuns: RUNS / 4, seed: 12 },
    );
  });
});

describe('two devices', () => {
  const first = (studio: Studio) => [...studio.books[0]!.values()];
  const edit = (device: number, wall: number, what: Step['what'] = 'edit'): Step => ({
    ...{ device, wall, what, pick: 0, from: 1 - device },
  });

  test('the newer version wins, the other is kept beside it', () => {
    const studio = new Studio(2);
    studio.step(edit(0, 0, 'new'));
    studio.step(edit(1, 0, 'merge'));
    studio.step(edit(0, 10));
    studio.step(edit(1, 20));
    const before = first(studio);
    const merged = mergeBooks(before, [...studio.books[1]!.values()]);
    expect(merged.map(nameOf).sort()).toEqual(['text 1', 'text 2']);
    const winner = merged.find(({ id }) => id === before[0]?.id);
    expect(winner && nameOf(winner)).toBe('text 2');
    const preview = previewMerge(before, merged);
    expect(preview.changed.map(nameOf)).toEqual(['text 2']);
    expect(preview.kept.map(nameOf)).toEqual(['text 1']);
    expect([preview.added, preview.deleted, preview.same]).toEqual([[], [], 0]);
  });

  test('a later change made in knowledge of the first simply replaces it, even by a slow clock', () => {
    const studio = new Studio(2);
    studio.step(edit(0, 500, 'new'));
    studio.step(edit(1, 0, 'merge'));
    studio.step(edit(1, -500));
    studio.step(edit(0, 0, 'merge'));
    expect(first(studio).map(nameOf)).toEqual(['text 1']);
  });

  test('a change survives a deletion that did not know of it', () => {
    const studio = new Studio(2);
    studio.step(edit(0, 0, 'new'));
    studio.step(edit(1, 0, 'merge'));
    studio.step(edit(0, 5));
    studio.step(edit(1, 10, 'delete'));
    const merged = mergeBooks(first(studio), [...studio.books[1]!.values()]);
    const live = merged.filter(({ deletedAt }) => deletedAt === undefined);
    expect(live.map(nameOf)).toEqual(['text 1']);
  });

  test('a conflict copy that was gone on with still stands for what it grew from', () => {
    const studio = new Studio(2);
    studio.step(edit(0, 0, 'new'));
    studio.step(edit(1, 0, 'merge'));
    studio.step(edit(0, 1));
    const oldest = first(studio);
    studio.step(edit(0, 2));
    const older = first(studio);
    studio.step(edit(1, 50));
    const there = [...studio.books[1]!.values()];
    studio.step(edit(0, 0, 'merge'));
    // The losing version is gone on with where it was kept.
    const [winner] = there;
    studio.step({ ...edit(0, 60), pick: first(studio).findIndex(({ id }) => id !== winner!.id) });
    const grown = first(studio).filter(({ id }) => id !== winner!.id);
    expect(grown.map(nameOf)).toEqual(['text 4']);

    const known = mergeBooks(grown, there);
    expect(known.map(nameOf).sort()).toEqual(['text 3', 'text 4']);
    for (const late of [oldest, older]) expect(mergeBooks(known, late)).toEqual(known);
    expect(mergeBooks(mergeBooks(oldest, older), known)).toEqual(known);
    // Without the winner the entry keeps the version that there is.
    const alone = mergeBooks(grown, oldest);
    expect(alone.map(nameOf).sort()).toEqual(['text 1', 'text 4']);
    expect(mergeBooks(alone, there)).toEqual(known);
  });

  test('clearing the bin holds against a device that still has the entry in its bin', () => {
    const studio = new Studio(2);
    studio.step(edit(0, 0, 'new'));
    studio.step(edit(0, 1, 'delete'));
    studio.step(edit(1, 0, 'merge'));
    studio.step(edit(0, 2, 'purge'));
    studio.step(edit(0, 0, 'merge'));
    expect(first(studio).map(({ body }) => body)).toEqual([null]);
  });
});
