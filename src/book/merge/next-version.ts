import { later, tick } from '../schema/hybrid-clock.ts';
import { type AnyRecord, SCHEMA } from '../schema/record.ts';
import { latestOf, mergeVectors, type VersionVector } from '../schema/version-vector.ts';

/** Metadata that identifies a version. */
export type VersionMetadata = Pick<AnyRecord, 'schema' | 'changed' | 'clock' | 'device' | 'seen'>;

/**
 * Metadata of a device's next version, made in knowledge of the given versions.
 * @param last   the latest clock that this device has issued
 * @param nowMs  milliseconds since 1970 by the device's clock
 * @param known  the versions that it replaces; empty for a new entry
 */
export function nextVersionMetadata(
  device: string,
  last: string,
  nowMs: number,
  known: readonly AnyRecord[],
): VersionMetadata {
  let latest = last;
  for (const record of known)
    latest = later(latest, later(record.clock, latestOf(record.seen, device)));
  const clock = tick(latest, nowMs);
  let seen: VersionVector = { [device]: [[clock, clock]] };
  for (const record of known) {
    seen = mergeVectors(seen, record.seen);
    // When this device replaces its own version directly, it has written no other version in
    // between.
    if (record.device === device) seen = mergeVectors(seen, { [device]: [[record.clock, clock]] });
  }
  return { schema: SCHEMA, changed: new Date(nowMs).toISOString(), clock, device, seen };
}

/** A new version of an entry, moved to the bin. */
export function deleted<R extends AnyRecord>(record: R, marks: VersionMetadata): R {
  return { ...record, ...marks, deletedAt: marks.changed };
}

/** A new version of an entry, restored from the bin. */
export function restored<R extends AnyRecord>(record: R, marks: VersionMetadata): R {
  const { deletedAt: _, ...kept } = record;
  return { ...kept, ...marks } as R;
}

/** The tombstone of an entry: the same version, without contents. */
export function purged(record: AnyRecord): AnyRecord {
  return { ...record, purged: true, body: null };
}
