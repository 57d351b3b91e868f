/**
 * Merging of books that were changed apart. Each id stands for a set of versions, of which those are
 * kept that no other version was made in knowledge of; the newest lies under the id itself, any
 * other beside it as a conflict copy, whose id is the hash of the record and its losing version. A
 * conflict copy that nobody has touched still counts as the version it keeps; one that was touched
 * is an entry of its own, and remembers which version it grew from. So a merge is a union followed by
 * taking what is maximal in a partial order, and the same copies give the same book in any order and
 * any number of times.
 * @see C. Baquero, N. Preguiça, "Why logical clocks are easy", ACM Queue 14 (2016), on version vectors
 */
import { compareClocks } from './clock.ts';
import { canonical, digest } from './digest.ts';
import type { AnyRecord, Conflict } from './record.ts';
import { knows, type Seen, sameSeen } from './seen.ts';

/** Names one version of an entry: the id under which it is kept beside a newer one. */
export const versionId = (record: AnyRecord): string => digest(canonical(record));

/** An entry's version as it is kept beside a newer one. */
export function beside(record: AnyRecord): AnyRecord {
  const { id, seen, conflict } = record;
  const kept: Conflict = { of: id, seen, ...(conflict ? { before: conflict } : {}) };
  return { ...record, id: versionId(record), conflict: kept };
}

/** The version that an untouched conflict copy keeps; any other entry is itself. */
function versionOf(record: AnyRecord): AnyRecord {
  let version = record;
  while (version.conflict && sameSeen(version.seen, version.conflict.seen)) {
    const { conflict, ...rest } = version;
    const before = conflict.before ? { conflict: conflict.before } : {};
    version = { ...rest, id: conflict.of, ...before } as AnyRecord;
  }
  return version;
}

/** True when `x` was made in knowledge of `y`, or is `y` taken out of the bin for good. */
function supersedes(x: AnyRecord, y: AnyRecord): boolean {
  if (!knows(x.seen, y.seen)) return false;
  return !knows(y.seen, x.seen) || (x.purged === true && y.purged !== true);
}

/** Newest first, the same on every device. */
function byNewest(x: AnyRecord, y: AnyRecord): number {
  const byTime = compareClocks(y.clock, x.clock) || compareClocks(y.device, x.device);
  return byTime || compareClocks(versionId(y), versionId(x));
}

interface Family {
  readonly versions: AnyRecord[];
  /** What versions knew that live on as entries of their own. */
  readonly outgrown: Seen[];
}

/**
 * The book that knows all of several books; commutative, associative and idempotent.
 * @param books each any number of entries; one id may occur several times
 * @returns one entry an id, in the order of ids
 */
export function mergeBooks(...books: readonly (readonly AnyRecord[])[]): readonly AnyRecord[] {
  const families = new Map<string, Family>();
  const familyOf = (id: string): Family => {
    const found = families.get(id);
    if (found) return found;
    const made: Family = { versions: [], outgrown: [] };
    families.set(id, made);
    return made;
  };
  for (const book of books)
    for (const record of book) {
      const version = versionOf(record);
      const { versions } = familyOf(version.id);
      if (!versions.some((other) => sameValue(other, version))) versions.push(version);
      for (let grown = version.conflict; grown; grown = grown.before)
        familyOf(grown.of).outgrown.push(grown.seen);
    }

  const merged = new Map<string, AnyRecord>();
  let copies = new Map<string, AnyRecord[]>();
  // A conflict copy may itself meet versions under its id, and so on; each round settles one more.
  for (let settled = false; !settled; ) {
    const next = new Map<string, AnyRecord[]>();
    merged.clear();
    for (const id of new Set([...families.keys(), ...copies.keys()])) {
      const { versions = [], outgrown = [] } = families.get(id) ?? {};
      const all = [...versions, ...(copies.get(id) ?? [])];
      const [newest, ...others] = standing(all, outgrown);
      if (newest) merged.set(id, newest);
      for (const other of others) {
        const copy = beside(other);
        next.set(copy.id, [...(next.get(copy.id) ?? []), copy]);
      }
    }
    settled = sameValue(keysOf(copies), keysOf(next));
    copies = next;
  }
  return [...merged.values()].sort((x, y) => compareClocks(x.id, y.id));
}

const keysOf = (copies: ReadonlyMap<string, readonly AnyRecord[]>): readonly string[] =>
  [...copies.values()].flatMap((several) => several.map(versionId)).sort();

/** The versions that no other was made in knowledge of, newest first; of some, always at least one. */
function standing(versions: readonly AnyRecord[], outgrown: readonly Seen[]): readonly AnyRecord[] {
  if (versions.length < 2) return versions;
  const apart = versions
    .filter((version) => !versions.some((other) => supersedes(other, version)))
    .sort(byNewest);
  const live = apart.filter(
    ({ seen }) => !outgrown.some((known) => knows(known, seen) && !knows(seen, known)),
  );
  return live.length > 0 ? live : apart.slice(0, 1);
}

/** Equal in all that JSON can say. */
export function sameValue(x: unknown, y: unknown): boolean {
  if (Object.is(x, y)) return true;
  if (typeof x !== 'object' || typeof y !== 'object' || x === null || y === null) return x === y;
  if (Array.isArray(x) !== Array.isArray(y)) return false;
  const keys = Object.keys(x);
  if (keys.length !== Object.keys(y).length) return false;
  const [left, right] = [x as Record<string, unknown>, y as Record<string, unknown>];
  return keys.every((key) => Object.hasOwn(right, key) && sameValue(left[key], right[key]));
}

/** What a merge would do to a book, or has done. */
export interface MergePreview {
  /** Entries that the book has not had. */
  readonly added: readonly AnyRecord[];
  /** Entries that a newer version replaces. */
  readonly changed: readonly AnyRecord[];
  /** Entries that go into the bin, or leave it for good. */
  readonly deleted: readonly AnyRecord[];
  /** Versions kept beside newer ones, because both sides had changed the same entry. */
  readonly kept: readonly AnyRecord[];
  /** Conflict copies that somebody has dealt with elsewhere: they are no longer needed here. */
  readonly settled: readonly AnyRecord[];
  /** Entries that are in both already, or older in the copy. */
  readonly same: number;
}

/** Sorts what merging changes; `merged` is what {@link mergeBooks} made of `book` and others. */
export function previewMerge(
  book: readonly AnyRecord[],
  merged: readonly AnyRecord[],
): MergePreview {
  const before = new Map(book.map((record) => [record.id, record]));
  const preview = {
    added: [] as AnyRecord[],
    changed: [] as AnyRecord[],
    deleted: [] as AnyRecord[],
    kept: [] as AnyRecord[],
    settled: [] as AnyRecord[],
    same: 0,
  };
  const left = new Set(merged.map(({ id }) => id));
  for (const record of book) if (!left.has(record.id)) preview.settled.push(record);
  for (const record of merged) {
    const was = before.get(record.id);
    if (was && sameValue(was, record)) preview.same++;
    else if (!was && record.conflict) preview.kept.push(record);
    else if (record.deletedAt !== undefined) preview.deleted.push(record);
    else if (was) preview.changed.push(record);
    else preview.added.push(record);
  }
  return preview;
}
