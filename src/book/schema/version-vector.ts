import { type Clock, later } from './hybrid-clock.ts';

/** An interval of one device's clock, both ends inclusive. */
export type ClockInterval = readonly [from: Clock, to: Clock];

/**
 * Version vector: the versions of one entry that a version was made in knowledge of, itself
 * included, as ordered clock intervals per device. The latest clock per device is not enough. A
 * device whose change lost against another's and which then edits the winner has not thereby seen
 * its own losing version.
 */
export type VersionVector = Readonly<Record<string, readonly ClockInterval[]>>;

const spansOf = (seen: VersionVector, device: string): readonly ClockInterval[] =>
  Object.hasOwn(seen, device) ? seen[device]! : [];

/** True when `x` includes every version that `y` includes. */
export const includesVersions = (x: VersionVector, y: VersionVector): boolean =>
  Object.entries(y).every(([device, spans]) =>
    spans.every(([from, to]) =>
      spansOf(x, device).some((span) => span[0] <= from && to <= span[1]),
    ),
  );

export const sameVersionVector = (x: VersionVector, y: VersionVector): boolean =>
  includesVersions(x, y) && includesVersions(y, x);

/** The latest clock of a device in a version vector; '' when it has none. */
export const latestOf = (seen: VersionVector, device: string): Clock =>
  spansOf(seen, device).at(-1)?.[1] ?? '';

/** Sorts intervals and merges those that overlap. */
function tidy(spans: readonly ClockInterval[]): readonly ClockInterval[] {
  const out: ClockInterval[] = [];
  for (const span of spans.toSorted(([x], [y]) => (x < y ? -1 : x > y ? 1 : 0))) {
    const last = out.at(-1);
    if (last && span[0] <= last[1]) out[out.length - 1] = [last[0], later(span[1], last[1])];
    else out.push(span);
  }
  return out;
}

/** Union of two version vectors. */
export function mergeVectors(x: VersionVector, y: VersionVector): VersionVector {
  const out: Record<string, readonly ClockInterval[]> = { ...x };
  for (const [device, spans] of Object.entries(y))
    out[device] = tidy([...spansOf(x, device), ...spans]);
  return out;
}

/** True when all intervals are ordered and disjoint, and the device's last one ends at `clock`. */
export function wellFormed(seen: VersionVector, device: string, clock: Clock): boolean {
  const own = spansOf(seen, device);
  return (
    own.at(-1)?.[1] === clock &&
    Object.values(seen).every(
      (spans) =>
        spans.length > 0 &&
        spans.every(([from, to], i) => from <= to && (i === 0 || spans[i - 1]![1] < from)),
    )
  );
}
