import { later, tick } from './clock.ts';
import { type AnyRecord, SCHEMA } from './record.ts';
import { join, latestOf, type Seen } from './seen.ts';

/** The fields that name a version. */
export type Marks = Pick<AnyRecord, 'schema' | 'changed' | 'clock' | 'device' | 'seen'>;

/**
 * The marks of a device's next version, made in knowledge of others.
 * @param last   the latest clock that this device has given out
 * @param nowMs  milliseconds since 1970, as the device believes
 * @param known  the versions that it replaces; none for a new entry
 */
export function nextMarks(
  device: string,
  last: string,
  nowMs: number,
  known: readonly AnyRecord[],
): Marks {
  let latest = last;
  for (const record of known)
    latest = later(latest, later(record.clock, latestOf(record.seen, device)));
  const clock = tick(latest, nowMs);
  let seen: Seen = { [device]: [[clock, clock]] };
  for (const record of known) {
    seen = join(seen, record.seen);
    // Straight on top of this device's own version there is nothing of its own between the two.
    if (record.device === device) seen = join(seen, { [device]: [[record.clock, clock]] });
  }
  return { schema: SCHEMA, changed: new Date(nowMs).toISOString(), clock, device, seen };
}

/** Into the bin. */
export function deleted<R extends AnyRecord>(record: R, marks: Marks): R {
  return { ...record, ...marks, deletedAt: marks.changed };
}

/** Back from the bin. */
export function restored<R extends AnyRecord>(record: R, marks: Marks): R {
  const { deletedAt: _, ...kept } = record;
  return { ...kept, ...marks } as R;
}

/** Out of the bin for good: the same version, without its contents. */
export function purged(record: AnyRecord): AnyRecord {
  return { ...record, purged: true, body: null };
}
