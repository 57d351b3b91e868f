import type { PeriodRow, PeriodVerdict } from '../harmony/period-practice.ts';
import type { Related, Relation, Relations, Roles } from '../harmony/roles-and-intervals.ts';

/** Names the dominant colour, the foil and the accent. @param colours of the harmony, in order */
export function roleWords({ dominant, foil, accent }: Roles, colours: readonly Related[]): string {
  const name = (i: number) => colours[i]!.name;
  const parts = [`The ${name(dominant)} is dominant`];
  if (foil !== null) parts.push(`the ${name(foil)} is its foil`);
  if (accent !== null) parts.push(`the ${name(accent)} is the accent`);
  return `${parts.join(', ')}.`;
}

/** The balance of warm and cool within a sentence: "warm, with a cool note". */
export function temperatureWords({ warm, cool }: Relations['temperature']): string {
  if (warm + cool < 0.2) return 'mostly neither warm nor cool';
  if (cool < 0.02) return 'warm throughout';
  if (warm < 0.02) return 'cool throughout';
  if (warm > 3 * cool) return 'warm, with a cool note';
  if (cool > 3 * warm) return 'cool, with a warm note';
  if (warm > 1.4 * cool) return 'more warm than cool';
  if (cool > 1.4 * warm) return 'more cool than warm';
  return 'warm and cool in balance';
}

/**
 * How two colours differ: a clause each, without its capital and full stop.
 * @param colours of the harmony, in order
 */
export function intervalWords(
  { of, beside, lightness, chroma, hue }: Relation,
  colours: readonly Related[],
): Readonly<Record<'lightness' | 'chroma' | 'hue', string>> {
  const names = [of, beside].map((i) => `the ${colours[i]!.name}`) as [string, string];
  return {
    lightness: compared(names, lightness, [3, 10, 30], 'equally light', ['darker', 'lighter']),
    chroma: compared(names, chroma, [4, 12, 30], 'equally strong', ['duller', 'brighter']),
    hue: hueIntervalWords(hue, names.join(' and '), colours),
  };
}

function compared(
  [x, y]: readonly [string, string],
  by: number,
  [same, little, much]: readonly [number, number, number],
  alike: string,
  [down, up]: readonly [string, string],
): string {
  const size = Math.abs(by);
  if (size < same) return `${x} and ${y} are ${alike}`;
  const word = by < 0 ? down : up;
  const how = size < little ? 'a little ' : size >= much ? 'much ' : '';
  return `${y} is ${how}${word} than ${x}`;
}

/** Words for a difference of hue, by upper bound in degrees; the angle itself is never shown. */
const FAR: readonly (readonly [below: number, words: string])[] = [
  [12, 'of one hue'],
  [40, 'neighbours in hue'],
  [80, 'of related hues'],
  [130, 'far apart in hue'],
  [181, 'of opposed hues'],
];

function hueIntervalWords(
  { turnDeg, hueless }: Relation['hue'],
  both: string,
  colours: readonly Related[],
): string {
  if (hueless.length === 2) return `${both} have hardly a hue`;
  if (hueless.length === 1)
    return `the ${colours[hueless[0]!]!.name} has hardly a hue beside the other`;
  return `${both} are ${FAR.find(([below]) => Math.abs(turnDeg) < below)![1]}`;
}

/** A row as a sentence: "Blue and green: held to go together, but disputed (…). He held that …". */
export function periodWords({ pair, held, source, note }: PeriodRow): string {
  const both = pair.join(' and ');
  const sentence = `${both.charAt(0).toUpperCase()}${both.slice(1)}: ${VERDICT_WORDS[held]} (${source ?? 'common practice'}).`;
  return note ? `${sentence} ${note}` : sentence;
}

const VERDICT_WORDS: Record<PeriodVerdict, string> = {
  held: 'held to go together',
  seldom: 'seldom put together',
  'held; disputed': 'held to go together, but disputed',
  'held, single report': 'held to go together in a single report',
};
