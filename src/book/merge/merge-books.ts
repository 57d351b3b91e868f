/**
 * Merges books that were changed independently. Each id stands for a set of versions. A version
 * survives unless another one superseded it, that is, was made in knowledge of it. The newest
 * survivor has the id itself; each other one becomes a conflict copy, whose id is a hash of the
 * record and its losing version. A conflict copy that nobody has edited still counts as the version
 * that it preserves; an edited one is an entry of its own and records the version that it came
 * from. So a merge is a union followed by taking the maximal elements of a partial order: the same
 * copies give the same book in any order and after any number of repetitions.
 * @see C. Baquero, N. Preguiça, "Why logical clocks are easy", ACM Queue 14 (2016), on version
 *   vectors
 */

import { canonical, digest } from '../schema/digest.ts';
import { compareClocks } from '../schema/hybrid-clock.ts';
import type { AnyRecord, Conflict } from '../schema/record.ts';
import {
  includesVersions,
  sameVersionVector,
  type VersionVector,
} from '../schema/version-vector.ts';

/** Id of a version when it is stored as a conflict copy. */
const versionId = (record: AnyRecord): string => digest(canonical(record));

/** A version of an entry in the form of a conflict copy. */
export function toConflictCopy(record: AnyRecord): AnyRecord {
  const { id, seen, conflict } = record;
  const kept: Conflict = { of: id, seen, ...(conflict ? { before: conflict } : {}) };
  return { ...record, id: versionId(record), conflict: kept };
}

/** The version that an unedited conflict copy preserves; any other entry itself. */
function versionOf(record: AnyRecord): AnyRecord {
  let version = record;
  while (version.conflict && sameVersionVector(version.seen, version.conflict.seen)) {
    const { conflict, ...rest } = version;
    const before = conflict.before ? { conflict: conflict.before } : {};
    version = { ...rest, id: conflict.of, ...before } as AnyRecord;
  }
  return version;
}

/** True when `x` was made in knowledge of `y`, or is the purged form of the same version. */
function supersedes(x: AnyRecord, y: AnyRecord): boolean {
  if (!includesVersions(x.seen, y.seen)) return false;
  return !includesVersions(y.seen, x.seen) || (x.purged === true && y.purged !== true);
}

/** Newest first; ties are broken the same way on every device. */
function byNewest(x: AnyRecord, y: AnyRecord): number {
  const byTime = compareClocks(y.clock, x.clock) || compareClocks(y.device, x.device);
  return byTime || compareClocks(versionId(y), versionId(x));
}

interface Family {
  readonly versions: AnyRecord[];
  /** Version vectors of versions that continue as entries of their own. */
  readonly outgrown: VersionVector[];
}

/**
 * Merges several books; commutative, associative and idempotent.
 * @param books any number of entries each; an id may occur several times
 * @returns one entry per id, in the order of ids
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
  // A conflict copy may meet other versions under its id. Repeat until the set of copies is stable.
  for (let settled = false; !settled; ) {
    const next = new Map<string, AnyRecord[]>();
    merged.clear();
    for (const id of new Set([...families.keys(), ...copies.keys()])) {
      const { versions = [], outgrown = [] } = families.get(id) ?? {};
      const all = [...versions, ...(copies.get(id) ?? [])];
      const [newest, ...others] = maximalVersions(all, outgrown);
      if (newest) merged.set(id, newest);
      for (const other of others) {
        const copy = toConflictCopy(other);
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

/** The versions that no other one supersedes, newest first; never empty unless `versions` is. */
function maximalVersions(
  versions: readonly AnyRecord[],
  outgrown: readonly VersionVector[],
): readonly AnyRecord[] {
  if (versions.length < 2) return versions;
  const apart = versions
    .filter((version) => !versions.some((other) => supersedes(other, version)))
    .sort(byNewest);
  const live = apart.filter(
    ({ seen }) =>
      !outgrown.some((known) => includesVersions(known, seen) && !includesVersions(seen, known)),
  );
  return live.length > 0 ? live : apart.slice(0, 1);
}

/** Deep equality of JSON values. */
export function sameValue(x: unknown, y: unknown): boolean {
  if (Object.is(x, y)) return true;
  if (typeof x !== 'object' || typeof y !== 'object' || x === null || y === null) return x === y;
  if (Array.isArray(x) !== Array.isArray(y)) return false;
  const keys = Object.keys(x);
  if (keys.length !== Object.keys(y).length) return false;
  const [left, right] = [x as Record<string, unknown>, y as Record<string, unknown>];
  return keys.every((key) => Object.hasOwn(right, key) && sameValue(left[key], right[key]));
}

/** What a merge changes in a book. */
export interface MergePreview {
  /** Entries that are new to the book. */
  readonly added: readonly AnyRecord[];
  /** Entries that a newer version replaces. */
  readonly changed: readonly AnyRecord[];
  /** Entries that are moved to the bin or purged. */
  readonly deleted: readonly AnyRecord[];
  /** Conflict copies that the merge creates because both sides had changed the same entry. */
  readonly kept: readonly AnyRecord[];
  /** Conflict copies that were resolved elsewhere and are no longer needed here. */
  readonly settled: readonly AnyRecord[];
  /** Number of entries that do not change: already in both books, or older in the copy. */
  readonly same: number;
}

/**
 * Classifies the changes of a merge; `merged` is the result of {@link mergeBooks} for `book` and
 * others.
 */
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
