import type { Drying } from '../pigment/facts.ts';
import { dayAfter, daysBetween } from './calendar.ts';
import { factsOf } from './known.ts';
import { type DryState, type Layer, sharesOf } from './passage.ts';
import { filmUmOf, spareOilOf } from './quantity.ts';

/**
 * Days until pure paste in linseed oil, 40 micrometres thick, is dry to the touch. The words are the
 * handbooks'; the days are estimates of common practice in a warm, light room.
 */
const DAYS: Readonly<Record<Drying, readonly [least: number, most: number]>> = {
  fast: [2, 4],
  medium: [3, 7],
  slow: [6, 14],
  'very slow': [12, 30],
};
const USUAL_UM = 40;

/** A range of days. */
export interface DryDays {
  readonly least: number;
  readonly most: number;
}

/** Days of a mixture at the usual thickness: its pigments' days, by volume, on a scale of ratios. */
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

/** Days of a film: thickness by its square root, spare oil by its share of the paste (estimates). */
export function filmDays(layer: Pick<Layer, 'parts' | 'film' | 'filmUm' | 'spareOil'>): DryDays {
  const { least, most } = pasteDays(layer.parts);
  const slower = Math.sqrt(filmUmOf(layer) / USUAL_UM) * (1 + spareOilOf(layer));
  return { least: least * slower, most: most * slower };
}

/** How dry a coat is: at its slowest and at its quickest. The painter's touch decides. */
export interface Dryness {
  readonly least: DryState;
  readonly most: DryState;
  /** ISO days between which it is expected to become touch-dry. */
  readonly from: string;
  readonly to: string;
  /** The finger has been asked. */
  readonly felt: boolean;
}

const stateAt = (age: number, days: number): DryState =>
  age >= days ? 'touch-dry' : age >= days / 2 ? 'tacky' : 'wet';

/** @param today ISO day, not before the coat was laid */
export function drynessOf(layer: Layer, today: string): Dryness {
  const days = filmDays(layer);
  const from = dayAfter(layer.date, Math.ceil(days.least));
  const to = dayAfter(layer.date, Math.ceil(days.most));
  const { felt } = layer;
  // Touch-dry stays so; wet and tacky only hold for the day on which they were felt.
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

/** Dry enough to be glazed: even at its slowest, or because the painter felt it. */
export const isDry = ({ least }: Dryness): boolean => least === 'touch-dry';

/** What is painted on today: every coat of the last day on which the passage was worked. */
export function groundOf(layers: readonly Layer[]): readonly Layer[] {
  const days = layers.map(({ date }) => date).sort();
  const last = days.at(-1);
  return layers.filter(({ date }) => date === last);
}

const STATES: readonly DryState[] = ['wet', 'tacky', 'touch-dry'];

/** How dry the ground is where it is wettest, and the coat that is so; null where nothing lies there. */
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
