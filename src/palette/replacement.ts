import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { findMixtures } from '../mixture/find-mixtures.ts';
import { type PileParts, pilePartsOf } from '../mixture/pile-parts.ts';
import { standInsOf } from '../pigment/pigment-facts.ts';
import type { Studio } from './passage.ts';
import { factsOf, handbookId, hazardOf, isToxic } from './pigment-lookup.ts';

/** The nearest mixture without certain pigments. */
export interface Replacement extends PileParts {
  /** CIEDE2000 from the requested colour. */
  readonly deltaE00: number;
}

/**
 * Finds the nearest other mixture of a colour; null if the shelf has none. It adds no toxic pigment
 * that the pile did not contain.
 * @param leaveOut pigments to avoid, by the shelf's names
 * @param before pigments of the replaced pile
 */
export function nearestReplacement(
  lab: Lab,
  leaveOut: readonly string[],
  before: readonly string[],
  studio: Studio,
): Replacement | null {
  const strangers = toxicOf(studio).filter((pigment) => !before.includes(pigment));
  const found = findMixtures([lab], studio.shelf, {
    constraints: { leaveOut: [...leaveOut, ...strangers] },
    quick: true,
    alternatives: 0,
  });
  if (!found.ok) return null;
  const other = pilePartsOf(found.value[0]!.simplest);
  return other.parts.length === 0 ? null : { ...other, deltaE00: deltaE00(lab, other.lab) };
}

/** Every toxic paint of a shelf. */
export const toxicOf = ({ shelf, stock }: Studio): readonly string[] =>
  shelf.paints.map(({ pigment }) => pigment).filter((pigment) => isToxic(hazardOf(stock, pigment)));

/** Safe modern paints that can replace a pigment, by name and colour-index name. */
export function standInWords(pigment: string): readonly string[] {
  const ours = standInsOf(handbookId(pigment)).map(
    ({ name, colourIndex }) => `${name} (${colourIndex.name})`,
  );
  return ours.length > 0 ? ours : (factsOf(pigment)?.standIns.names ?? []);
}
