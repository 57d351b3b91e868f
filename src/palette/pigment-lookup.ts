import {
  type HazardLevel,
  PIGMENTS,
  type PigmentFacts,
  pigmentOf,
} from '../pigment/pigment-facts.ts';
import type { Stock } from '../pigment/stock.ts';
import { baseOf } from './passage.ts';

const plain = (words: string): string =>
  ` ${words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()} `;

/** Every name and synonym, longest first, so that "Venetian red earth" is tried before "red". */
const NAMES = PIGMENTS.flatMap((facts) =>
  [facts.name, facts.id, ...facts.synonyms].map((name) => ({ name: plain(name), facts })),
)
  .filter(({ name }) => name.length > 5)
  .sort((a, b) => b.name.length - a.name.length);

const FOUND = new Map<string, PigmentFacts | null>();

/**
 * Handbook facts about a paint: by its id, otherwise by a known name within its own. A shelf file
 * may call lead white "Lead white, no. 2", and its hazards still apply.
 * @returns null if no handbook knows it
 */
export function factsOf(pigment: string): PigmentFacts | null {
  const base = baseOf(pigment);
  const byId = pigmentOf(base);
  if (byId !== null || base.startsWith('own:')) return byId;
  const kept = FOUND.get(base);
  if (kept !== undefined) return kept;
  const words = plain(base);
  const found = NAMES.find(({ name }) => words.includes(name))?.facts ?? null;
  FOUND.set(base, found);
  return found;
}

/** Handbook id of a paint, or its own name without a lot. */
export const handbookId = (pigment: string): string => factsOf(pigment)?.id ?? baseOf(pigment);

/** Hazard level of a pigment; an unknown one counts as `caution`. */
export function hazardOf(stock: Stock | null, pigment: string): HazardLevel {
  const own = stock?.own.find(({ id }) => id === baseOf(pigment));
  return own?.hazard ?? factsOf(pigment)?.hazard.level ?? 'caution';
}
export const isToxic = (level: HazardLevel): boolean => level === 'toxic' || level === 'very_toxic';
