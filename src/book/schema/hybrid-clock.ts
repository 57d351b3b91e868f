/**
 * A hybrid logical clock: wall time that never runs backwards, with a counter that orders events of
 * the same millisecond. The text has a fixed width, so that comparing texts compares clocks.
 * @see S. Kulkarni, M. Demirbas, D. Madappa, B. Avva, M. Leone, "Logical Physical Clocks", OPODIS
 *   2014
 */
export type Clock = string;

const MS_DIGITS = 15;
const COUNT_DIGITS = 5;
const MOST_COUNT = 10 ** COUNT_DIGITS - 1;
/** Start of the year 10000, in milliseconds since 1970. A later clock is invalid. */
export const LATEST_MS = 253_402_300_800_000;

export const CLOCK_FORM = /^\d{15}\.\d{5}$/;
export const START: Clock = write(0, 0);

function write(ms: number, count: number): Clock {
  return `${String(ms).padStart(MS_DIGITS, '0')}.${String(count).padStart(COUNT_DIGITS, '0')}`;
}

/** The wall time of a clock, in milliseconds since 1970. */
export const msOf = (clock: Clock): number => Number(clock.slice(0, MS_DIGITS));

/**
 * The next clock after `last`: the wall time where it is later, otherwise `last` with its counter
 * increased. So a wall clock that was set back or stands still never produces an older clock or the
 * same one twice.
 *
 * @param last   the latest clock that this device has issued or is about to replace
 * @param wallMs milliseconds since 1970 by the device's clock; ignored when out of range or NaN
 * @throws RangeError when `last` is not a clock
 */
export function tick(last: Clock, wallMs: number): Clock {
  if (!CLOCK_FORM.test(last)) throw new RangeError(`not a clock: ${last}`);
  const lastMs = msOf(last);
  const wall = wallMs > 0 && wallMs < LATEST_MS ? Math.floor(wallMs) : 0;
  if (wall > lastMs) return write(wall, 0);
  const count = Number(last.slice(MS_DIGITS + 1));
  return count < MOST_COUNT ? write(lastMs, count + 1) : write(lastMs + 1, 0);
}

/** Negative when `x` is older, positive when it is newer, 0 when both are equal. */
export const compareClocks = (x: Clock, y: Clock): number => (x < y ? -1 : x > y ? 1 : 0);

export const later = (x: Clock, y: Clock): Clock => (x < y ? y : x);
