/** Formatting of numbers, dates and lengths in the reader's locale. */
import { readNumber } from '../../pigment/import/parse-number.ts';

const made = new Map<string, Intl.NumberFormat>();
function format(least: number, most: number, useGrouping: boolean): Intl.NumberFormat {
  const key = `${least} ${most} ${useGrouping}`;
  const known = made.get(key);
  if (known) return known;
  const one = new Intl.NumberFormat(undefined, {
    minimumFractionDigits: least,
    maximumFractionDigits: most,
    useGrouping,
    // Digits that all input fields can read.
    numberingSystem: 'latn',
  });
  made.set(key, one);
  return one;
}

/**
 * A number with `least` to `most` decimals. Small whole numbers look the same in every locale, so
 * they do not load the browser's number formatting.
 */
export const formatNumber = (value: number, least: number, most = least): string =>
  least === 0 && Number.isInteger(value) && value >= 0 && value < 1000
    ? String(value)
    : format(least, most, true).format(value);
/** A count as a whole number. */
export const formatCount = (value: number): string => formatNumber(Math.round(value), 0);
/** A number in the form of an input field: at most `most` decimals, no grouping. */
export const formatForField = (value: number, most = 3): string =>
  format(0, most, false).format(value).replace('−', '-');

const CM_PER_INCH = 2.54;
export const inchesOf = (cm: number): number => cm / CM_PER_INCH;
/**
 * Parses a length in centimetres or inches ("60", "60 cm", "24 in", "24″") and returns centimetres;
 * null for anything else.
 */
export function readLength(text: string): number | null {
  const [, number, unit] = /^\s*([\d.,]+)\s*(cm|in|inch|inches|"|″|)\s*$/i.exec(text) ?? [];
  const value = number === undefined ? null : readNumber(number);
  if (value === null || unit === '' || unit?.toLowerCase() === 'cm') return value;
  return value * CM_PER_INCH;
}

/** An ISO date, or date and time, as a date in the reader's locale. */
export const dateWords = (iso: string): string =>
  new Date(iso.length === 10 ? `${iso}T12:00:00` : iso).toLocaleDateString(undefined, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  });
/** An ISO date and time in the reader's locale, with the time of day. */
export const momentWords = (iso: string): string =>
  new Date(iso).toLocaleString(undefined, { dateStyle: 'long', timeStyle: 'short' });

/** Today's ISO date in the local time zone. */
export function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
