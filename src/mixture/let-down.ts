import { deltaE00 } from '../colour/difference.ts';
import { BANDS, spectrum } from '../colour/grid.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { type LetDownParts, REACHABLE_DELTA_E, type Share } from './mixture-types.ts';
import { shelfPaintOf } from './predict.ts';
import { compileShelf } from './search/compiled-shelf.ts';
import { TargetMetric } from './search/target-metric.ts';
import { FINE_PARTS, type PartLimits, WholePartsFinder } from './whole-parts.ts';

/** Parts of white per part of pigment: 10 is common practice, less may come nearer. */
const LET_DOWN_RATIOS = [10, 5, 3];
/** Weaker than can be measured in one step: only if nothing else comes near. */
const WEAK_RATIOS = [20];
/** CIEDE2000 that another let-down, or another ratio, must gain. */
const WORTH = 0.3;
/** CIEDE2000 below which the search ends. */
const NEAR = 0.7;

/**
 * Whole parts of a recipe with pigments below one part: as few of them as possible become
 * let-downs. All parts, including those of let-downs, keep strictly within the limits' ratio.
 * @param target CIELAB, D65
 * @param recipe shares that sum to 1
 * @returns null if no pigment is below one part, the shelf has no white, or the recipe has less
 *   white than the let-downs need
 */
export function letDownParts(
  target: Lab,
  recipe: readonly Share[],
  shelf: Shelf,
  limits: PartLimits = FINE_PARTS,
): LetDownParts | null {
  const { white } = shelf;
  const largest = Math.max(...recipe.map((s) => s.share));
  const least = Math.max(1 / limits.total, largest / limits.ratio);
  const small = recipe
    .filter((s) => s.share < least && s.pigment !== white)
    .sort((a, b) => a.share - b.share);
  if (white === null || small.length === 0) return null;
  if (!shelf.paints.some((p) => p.pigment === white)) return null;
  const ways = (steps: readonly number[]) =>
    small.map((_, i) =>
      steps.map((whiteParts) => ({ weakest: small.slice(0, i + 1), whiteParts })),
    );
  let best: LetDownParts | null = null;
  for (const all of [...ways(LET_DOWN_RATIOS), ...ways(WEAK_RATIOS)]) {
    for (const { weakest, whiteParts } of all) {
      if (whiteParts > LET_DOWN_RATIOS[0]! && best && best.deltaE00 <= REACHABLE_DELTA_E)
        return best;
      const found = withWhite(target, recipe, weakest, white, whiteParts, shelf, limits);
      if (found && (!best || found.deltaE00 < best.deltaE00 - WORTH)) best = found;
    }
    if (best && best.deltaE00 < NEAR) return best;
  }
  return best;
}

function withWhite(
  target: Lab,
  recipe: readonly Share[],
  small: readonly Share[],
  white: string,
  whiteParts: number,
  shelf: Shelf,
  limits: PartLimits,
): LetDownParts | null {
  const left = new Map<string, number>();
  for (const { pigment, share } of recipe)
    left.set(pigment, small.some((s) => s.pigment === pigment) ? share * (1 + whiteParts) : share);
  const taken = small.reduce((sum, s) => sum + s.share * whiteParts, 0);
  const rest = (left.get(white) ?? 0) - taken;
  if (rest < 0) return null;
  if (rest > 0) left.set(white, rest);
  else left.delete(white);
  const names = [...left.keys()];
  const isSmall = (name: string) => small.some((s) => s.pigment === name);
  const paints: ShelfPaint[] = names.map((name) => ({
    pigment: name,
    label: name,
    paint: isSmall(name) ? letDownPaint(name, white, whiteParts, shelf) : shelfPaintOf(name, shelf),
  }));
  const divider = new WholePartsFinder(compileShelf(paints, shelf), {
    ...limits,
    beyond: Number.POSITIVE_INFINITY,
  });
  const shares = names.map((name) => left.get(name)!);
  const members = names.map((_, i) => i);
  const whole = divider.of(new TargetMetric(target), { members, shares, score: 0 });
  if (!whole) return null;
  return {
    letDowns: small.map(({ pigment }) => ({ pigment, white, parts: 1, whiteParts })),
    parts: whole.members
      .map((m, i) => ({ pigment: names[m]!, parts: whole.parts[i]!, letDown: isSmall(names[m]!) }))
      .sort((a, b) => b.parts - a.parts),
    lab: whole.lab,
    deltaE00: deltaE00(target, whole.lab),
  };
}

/** K and S of a let-down: one part of a pigment in `whiteParts` of the white, by volume. */
export function letDownPaint(pigment: string, white: string, whiteParts: number, shelf: Shelf) {
  const [one, other] = [shelfPaintOf(pigment, shelf), shelfPaintOf(white, shelf)];
  const blend = (a: Float64Array, b: Float64Array) =>
    Array.from({ length: BANDS }, (_, i) => (a[i]! + whiteParts * b[i]!) / (1 + whiteParts));
  return { K: spectrum<'K'>(blend(one.K, other.K)), S: spectrum<'S'>(blend(one.S, other.S)) };
}
