import type { Drying } from '../pigment/pigment-facts.ts';
import { dayAfter, daysBetween } from './iso-date.ts';
import { type DryState, type Layer, sharesOf } from './passage.ts';
import { factsOf } from './pigment-lookup.ts';
import { filmUmOf, spareOilOf } from './pile-quantity.ts';

/**
 * Days until pure paste in linseed oil, 40 micrometres thick, is touch-dry. The categories are the
 * handbooks'; the days are estimates of common practice in a warm, light room.
 */
const DAYS: Readonly<Record<Drying, readonly [least: number, most: number]>> = {
  fast: [2, 4],
  medium: [3, 7],
  slow: [6, 14],
  'very slow': [12, 30],
};
/** Thickness, micrometres, to which these days apply. */
const USUAL_UM = 40;

/** A range of days. */
interface DryDays {
  readonly least: number;
  readonly most: number;
}

/**
 * Drying time of a mixture at that thickness: geometric mean of its pigments' days, weighted by
 * volume.
 */
export function pasteDays(parts: Layer['parts']): DryDays {
  let least = 0;
  let most = 0;
  for (const { pigment, share } of sharesOf(parts)) {
    const days = DAYS[factsOf(pigment)?.drying.word ?? 'medium'];
    least += share * Math.log(days[0]);
    most += share * Math.log(days[1]);
  }
  return { least: Math.exp(least), most: Math.exp(most) };
}

/**
 * Drying time of a film: grows with the square root of its thickness and with its spare oil as a
 * share of the paste (estimates).
 */
export function filmDays(layer: Pick<Layer, 'parts' | 'film' | 'filmUm' | 'spareOil'>): DryDays {
  const { least, most } = pasteDays(layer.parts);
  const slower = Math.sqrt(filmUmOf(layer) / USUAL_UM) * (1 + spareOilOf(layer));
  return { least: least * slower, most: most * slower };
}

/**
 * Dryness of a coat, as a range: at its slowest and at its fastest. The painter's touch overrides
 * it.
 */
export interface Dryness {
  readonly least: DryState;
  readonly most: DryState;
  /** ISO dates between which it should become touch-dry. */
  readonly from: string;
  readonly to: string;
  /** The painter has tested it by touch. */
  readonly felt: boolean;
}

const stateAt = (age: number, days: number): DryState =>
  age >= days ? 'touch-dry' : age >= days / 2 ? 'tacky' : 'wet';

/**
 * Dryness of a coat today.
 * @param today ISO date, not before the coat was painted
 */
export function drynessOf(layer: Layer, today: string): Dryness {
  const days = filmDays(layer);
  const from = dayAfter(layer.date, Math.ceil(days.least));
  const to = dayAfter(layer.date, Math.ceil(days.most));
  const { felt } = layer;
  // A touch-dry finding stays valid; wet and tacky hold only on the day of the test.
  if (felt && (felt.state === 'touch-dry' || felt.date === today))
    return { least: felt.state, most: felt.state, from, to, felt: true };
  const age = daysBetween(layer.date, today);
  return {
    least: stateAt(age, days.most),
    most: stateAt(age, days.least),
    from,
    to,
    felt: false,
  };
}

/** Whether a coat can be glazed: touch-dry even at its slowest, or by the painter's test. */
export const isDry = ({ least }: Dryness): boolean => least === 'touch-dry';

/**
 * The coats that today's paint goes over: every coat of the last day on which the passage was
 * painted.
 */
export function groundOf(layers: readonly Layer[]): readonly Layer[] {
  const days = layers.map(({ date }) => date).sort();
  const last = days.at(-1);
  return layers.filter(({ date }) => date === last);
}

const STATES: readonly DryState[] = ['wet', 'tacky', 'touch-dry'];

/** Dryness of the wettest of those coats; null if there is none. */
export function groundDryness(
  layers: readonly Layer[],
  today: string,
): { readonly layer: Layer; readonly dryness: Dryness } | null {
  const ground = groundOf(layers).map((layer) => ({ layer, dryness: drynessOf(layer, today) }));
  ground.sort(
    (a, b) =>
      STATES.indexOf(a.dryness.least) - STATES.indexOf(b.dryness.least) ||
      (a.dryness.to < b.dryness.to ? 1 : -1),
  );
  return ground[0] ?? null;
}
