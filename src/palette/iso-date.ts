const DAY_MS = 86_400_000;
const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS =
  'January February March April May June July August September October November December'.split(
    ' ',
  );

/** Whether a string is a valid ISO date. */
export const isDay = (day: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(day) &&
  Number.isFinite(Date.parse(day)) &&
  new Date(day).toISOString().startsWith(day);

/** Whole days from one ISO date to another. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

/** The ISO date a number of days later. */
export const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);

/** "14 May". */
export function dayWords(day: string): string {
  const date = new Date(day);
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
}

/** "Thursday 14 May 2026". */
export function fullDay(day: string): string {
  const date = new Date(day);
  return `${DAYS[date.getUTCDay()]} ${dayWords(day)} ${date.getUTCFullYear()}`;
}
