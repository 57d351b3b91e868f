import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { LetDown } from '../mixture/mixture-types.ts';
import type { PilePart } from '../mixture/pile-parts.ts';
import type { Drying } from '../pigment/pigment-facts.ts';
import { daysBetween } from './iso-date.ts';
import { sharesOf } from './passage.ts';
import { factsOf, handbookId } from './pigment-lookup.ts';

/** How a heap is stored overnight. */
export type StorageWay = 'under water' | 'under film' | 'in a tube' | 'open';

/** The rest of a pile at the end of the day. */
export interface Leftover {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly PilePart[];
  readonly lab?: Lab;
  readonly cm3: number;
  readonly kept: StorageWay;
  /** ISO date on which it was stored. */
  readonly date: string;
  /** The painter found a skin: discard it, do not stir it in. */
  readonly skinned?: boolean;
}

/**
 * Pigments that may be stored under water; all others lose colour there (handbook, 16th century;
 * common practice).
 */
const WATER = ['lead_white', 'lead_tin_yellow', 'massicot', 'red_lead'];
export const mayLieUnderWater = (parts: readonly PilePart[]): boolean =>
  parts.every(({ pigment }) => WATER.includes(handbookId(pigment)));

/** Ways to store a heap, best first. */
export const keepingWays = (parts: readonly PilePart[]): readonly StorageWay[] => [
  'under film',
  'in a tube',
  ...(mayLieUnderWater(parts) ? (['under water'] as const) : []),
];

/**
 * Days that a sealed, cool heap keeps (estimates): possibly, at most. Open paint keeps for the day.
 */
const KEEPS: Readonly<Record<Drying, readonly [number, number]>> = {
  fast: [1, 2],
  medium: [2, 5],
  slow: [5, 10],
  'very slow': [5, 10],
};
/** Fast driers that nevertheless keep like an earth. */
const LONGER = ['lead_white', 'burnt_sienna', 'naples_yellow'];
/** Share below which a pigment does not count. */
const DECIDES = 0.05;

/** Days until a heap may have a skin, and until it certainly has. */
export function keepsDays(parts: readonly PilePart[], kept: StorageWay): readonly [number, number] {
  if (kept === 'open') return [1, 1];
  let days: readonly [number, number] = KEEPS.slow;
  for (const { pigment, share } of sharesOf(parts)) {
    if (share < DECIDES) continue;
    const word = LONGER.includes(handbookId(pigment))
      ? 'medium'
      : (factsOf(pigment)?.drying.word ?? 'medium');
    if (KEEPS[word][1] < days[1]) days = KEEPS[word];
  }
  return days;
}

/** Whether a leftover can be used, and why not. */
export type LeftoverState = 'fresh' | 'ageing' | 'past' | 'skinned' | 'spoilt';
/** State of a leftover on a day. */
export function leftoverState(leftover: Leftover, today: string): LeftoverState {
  if (leftover.skinned) return 'skinned';
  if (leftover.kept === 'under water' && !mayLieUnderWater(leftover.parts)) return 'spoilt';
  const age = daysBetween(leftover.date, today);
  const [least, most] = keepsDays(leftover.parts, leftover.kept);
  return age <= least ? 'fresh' : age <= most ? 'ageing' : 'past';
}

/** A leftover offered for today's piles. */
export interface Offer {
  readonly leftover: Leftover;
  readonly state: LeftoverState;
  /** Names of the piles that it serves; empty if nothing today resembles it. */
  readonly piles: readonly string[];
}

/** A pile of today that a leftover may serve. */
interface LeftoverTarget {
  readonly name: string;
  readonly parts: readonly PilePart[];
  readonly letDowns?: readonly LetDown[] | undefined;
  readonly lab: Lab;
}

/** The leftover of a pile; let-downs are resolved into their pigments. */
export const leftoverFromPile = (
  { name, parts, letDowns, lab }: LeftoverTarget,
  kept: Pick<Leftover, 'id' | 'cm3' | 'kept' | 'date'>,
): Leftover => ({
  ...kept,
  name,
  lab,
  parts: sharesOf(parts, letDowns).map(({ pigment, share }) => ({ pigment, parts: share })),
});

/** Whether two heaps have the same mixture, or no visible colour difference. */
function serves(leftover: Leftover, pile: LeftoverTarget): boolean {
  const [a, b] = [sharesOf(leftover.parts), sharesOf(pile.parts, pile.letDowns)];
  const same =
    a.length === b.length &&
    a.every(({ pigment, share }) =>
      b.some((one) => one.pigment === pigment && Math.abs(one.share - share) < 1e-6),
    );
  return same || (leftover.lab !== undefined && deltaE00(leftover.lab, pile.lab) <= 1);
}

/** Leftovers of previous days, oldest first; those to discard serve no pile. */
export function offersOf(
  leftovers: readonly Leftover[],
  piles: readonly LeftoverTarget[],
  today: string,
): readonly Offer[] {
  return leftovers
    .filter(({ date, cm3 }) => cm3 > 0 && daysBetween(date, today) >= 0)
    .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .map((leftover) => {
      const state = leftoverState(leftover, today);
      const usable = state === 'fresh' || state === 'ageing';
      const fit = usable ? piles.filter((pile) => serves(leftover, pile)) : [];
      return { leftover, state, piles: fit.map(({ name }) => name) };
    });
}
