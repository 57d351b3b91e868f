import { type Clock, later } from './clock.ts';

/** From one clock of a device to another, both included. */
export type Span = readonly [from: Clock, to: Clock];

/**
 * The versions of one entry that a version was made in knowledge of, itself included: per device, spans
 * of its clock in order. Spans rather than the latest clock alone: a device whose change lost against
 * another's, and which then changes the winner, has not thereby seen to its own losing version.
 */
export type Seen = Readonly<Record<string, readonly Span[]>>;

const spansOf = (seen: Seen, device: string): readonly Span[] =>
  Object.hasOwn(seen, device) ? seen[device]! : [];

/** True when all that `y` knew of, `x` knew of too. */
export const knows = (x: Seen, y: Seen): boolean =>
  Object.entries(y).every(([device, spans]) =>
    spans.every(([from, to]) =>
      spansOf(x, device).some((span) => span[0] <= from && to <= span[1]),
    ),
  );

export const sameSeen = (x: Seen, y: Seen): boolean => knows(x, y) && knows(y, x);

/** The latest clock of a device that is known of; '' for none. */
export const latestOf = (seen: Seen, device: string): Clock =>
  spansOf(seen, device).at(-1)?.[1] ?? '';

/** Spans in order, apart from each other. */
function tidy(spans: readonly Span[]): readonly Span[] {
  const out: Span[] = [];
  for (const span of spans.toSorted(([x], [y]) => (x < y ? -1 : x > y ? 1 : 0))) {
    const last = out.at(-1);
    if (last && span[0] <= last[1]) out[out.length - 1] = [last[0], later(span[1], last[1])];
    else out.push(span);
  }
  return out;
}

/** All that either knew. */
export function join(x: Seen, y: Seen): Seen {
  const out: Record<string, readonly Span[]> = { ...x };
  for (const [device, spans] of Object.entries(y))
    out[device] = tidy([...spansOf(x, device), ...spans]);
  return out;
}

/** True when spans are in order and apart, and `clock` of `device` ends the last of its own. */
export function wellFormed(seen: Seen, device: string, clock: Clock): boolean {
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
