import { type Fewest, type FewestOptions, fewest } from '../harmony/fewest-pigments.ts';
import type { MixFault } from '../mixture/search-options.ts';
import { ok, type Result } from '../result.ts';
import type { Day } from './day-plan.ts';
import type { Studio } from './passage.ts';

/** Cost of smaller pigment sets; `deltaE00` of every step follows the order of `piles`. */
export interface FewestOfDay extends Fewest {
  readonly piles: readonly { readonly palette: number; readonly name: string }[];
  /** Every pigment of the day. */
  readonly pigments: readonly string[];
}

/**
 * Finds the fewest pigments for all piles of a day, among those already on its palettes, and the
 * colour difference of each pile with each smaller set.
 */
export function fewestOfDay(
  day: Day,
  { shelf }: Studio,
  options: Omit<FewestOptions, 'constraints' | 'variants'> = {},
): Result<FewestOfDay, MixFault> {
  const piles = day.palettes.flatMap((palette, at) =>
    palette.piles.map(({ pile, lab }) => ({ palette: at, name: pile.name, lab })),
  );
  const used = new Set(day.palettes.flatMap(({ pigments }) => pigments.map(({ key }) => key)));
  const pigments = shelf.paints.map(({ pigment }) => pigment).filter((name) => used.has(name));
  const found = fewest(
    piles.map(({ lab }) => lab),
    shelf,
    { ...options, constraints: { inStock: pigments } },
  );
  if (!found.ok) return found;
  return ok({
    ...found.value,
    piles: piles.map(({ palette, name }) => ({ palette, name })),
    pigments,
  });
}
