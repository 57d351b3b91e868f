import { pairWarningOf } from '../pigment/pigment-facts.ts';
import { handbookId } from './pigment-lookup.ts';

/** Where two pigments meet; side by side on a palette they do not. */
type ClashPlace = 'pile' | 'layers' | 'slab';

/** A warning about two pigments that do not go together. */
export interface Clash {
  readonly where: ClashPlace;
  readonly severity: 'avoid' | 'caution';
  readonly pigments: readonly [string, string];
  /** Name of the pile, or of the passage or slab. */
  readonly in: string;
  /** The reasons, one per pigment. */
  readonly why: readonly string[];
}

/**
 * Warnings about every pair within one list, or between two lists.
 * @param place name of the pile, passage or slab
 * @param others null to pair `some` among themselves
 */
export function clashes(
  where: ClashPlace,
  place: string,
  some: readonly string[],
  others: readonly string[] | null,
): readonly Clash[] {
  const found: Clash[] = [];
  for (const [i, one] of some.entries()) {
    for (const other of others ?? some.slice(i + 1)) {
      const pair = pairWarningOf(handbookId(one), handbookId(other));
      if (pair === null) continue;
      const twice = found.some(
        ({ pigments }) => pigments.includes(one) && pigments.includes(other),
      );
      if (twice) continue;
      found.push({
        where,
        severity: pair.severity,
        pigments: [one, other],
        in: place,
        why: pair.why,
      });
    }
  }
  return found;
}
