import type { PalettePlan, Shortage } from './day-plan.ts';
import type { Rules } from './day-request.ts';
import { labelIn, type Studio } from './passage.ts';
import { nearestReplacement } from './replacement.ts';

/**
 * Pigments that the shelf lacks for a day, with the nearest other mixture for each pile that needs
 * them.
 */
export function shortagesOf(
  palettes: readonly PalettePlan[],
  rules: Rules,
  studio: Studio,
): readonly Shortage[] {
  const lacks = new Map<string, { lackCm3: number; dryRefused: boolean }>();
  for (const { supply, key } of palettes.flatMap(({ pigments }) => pigments)) {
    if (supply.lackCm3 <= 0) continue;
    const before = lacks.get(key);
    lacks.set(key, {
      lackCm3: (before?.lackCm3 ?? 0) + supply.lackCm3,
      dryRefused: supply.dryRefused || (before?.dryRefused ?? false),
    });
  }
  return [...lacks].map(([pigment, lack]) => ({
    pigment,
    label: labelIn(studio, pigment),
    ...lack,
    piles: palettes.flatMap(({ piles }, palette) =>
      piles
        .filter(({ amount }) => amount.pigments.some((one) => one.pigment === pigment))
        .map(({ pile, lab, amount }) => {
          const before = rules.pupils ? [] : amount.pigments.map((one) => one.pigment);
          // Leave out every pigment that is lacking, not only this one.
          const other = nearestReplacement(lab, [...lacks.keys()], before, studio);
          return { pile: pile.name, palette, other };
        }),
    ),
  }));
}
