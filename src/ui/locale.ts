/** Numbers, days and lengths as the reader writes them; what the core says in figures is set the same way. */
import { readNumber } from '../pigment/number.ts';

const made = new Map<string, Intl.NumberFormat>();
function format(least: number, most: number, useGrouping: boolean): Intl.NumberFormat {
  const key = `${least} ${most} ${useGrouping}`;
  const known = made.get(key);
  if (known) return known;
  const one = new Intl.NumberFormat(undefined, {
    minimumFractionDigits: least,
    maximumFractionDigits: most,
    useGrouping,
    // Digits that every field here reads.
    numberingSystem: 'latn',
  });
  made.set(key, one);
  return one;
}

/**
 * A figure with so many decimals, or from so few to so many. Small whole numbers are written alike everywhere,
 * and need not wait until the browser has what it sets figures with.
 */
export const figure = (value: number, least: number, most = least): string =>
  least === 0 && Number.isInteger(value) && value >= 0 && value < 1000
    ? String(value)
    : format(least, most, true).format(value);
/** How many of something. */
export const count = (value: number): string => figure(Math.round(value), 0);
/** A number as it stands in a field: at most so many decimals, and nothing between thousands. */
export const typed = (value: number, most = 3): string =>
  format(0, most, false).format(value).replace('−', '-');

let point: string | undefined;
/** What parts the whole from its decimals here; asked late, for the first screen has no figures. */
const pointHere = (): string => {
  point ??= typed(1.5).replace(/\d/g, '');
  return point;
};
const POINT = /(?<=\d)\.(?=\d)/g;
/** What the core says, with its figures as the reader writes them. */
export const said = (text: string): string =>
  pointHere() === '.' ? text : text.replaceAll(POINT, pointHere());

/**
 * The same for a sheet that stands in the page already. What the painter wrote stays as it was written: the names of
 * palettes and piles, and lots where they are told as lots ("lot 7.2", "Lots 7.2, 8.1;").
 * @param lots as they stand on the shelf
 */
export function saidIn(page: Node | null, lots: readonly string[]): void {
  if (page === null || pointHere() === '.') return;
  const written = lots
    .filter((lot) => lot.search(POINT) >= 0)
    .map((lot) => lot.replace(/^lot\s*/i, '').replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const figures =
    written.length === 0
      ? POINT
      : new RegExp(`(?<=\\blots? [^;:·]*)(${written.join('|')})(?!\\d)|${POINT.source}`, 'gi');
  const texts = document.createTreeWalker(page, NodeFilter.SHOW_TEXT);
  for (let text = texts.nextNode(); text; text = texts.nextNode()) {
    if (text.parentElement?.closest('h1, .pilename')) continue;
    text.nodeValue = (text.nodeValue ?? '').replaceAll(figures, (match) =>
      match === '.' ? pointHere() : match,
    );
  }
}

const CM_PER_INCH = 2.54;
export const inchesOf = (cm: number): number => cm / CM_PER_INCH;
/** A length in cm, of centimetres or inches as written ("60", "60 cm", "24 in", "24″"); null for anything else. */
export function readLength(text: string): number | null {
  const [, number, unit] = /^\s*([\d.,]+)\s*(cm|in|inch|inches|"|″|)\s*$/i.exec(text) ?? [];
  const value = number === undefined ? null : readNumber(number);
  if (value === null || unit === '' || unit?.toLowerCase() === 'cm') return value;
  return value * CM_PER_INCH;
}

/** An ISO day or date in the reader's own manner. */
export const dateWords = (iso: string): string =>
  new Date(iso.length === 10 ? `${iso}T12:00:00` : iso).toLocaleDateString(undefined, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  });
/** The same with the hour. */
export const momentWords = (iso: string): string =>
  new Date(iso).toLocaleString(undefined, { dateStyle: 'long', timeStyle: 'short' });

/** Today where the painter is, as an ISO day. */
export function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
