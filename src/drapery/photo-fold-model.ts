import type { Lab } from '../colour/lab.ts';
import { rangeMapping } from '../harmony/shelf-range.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { HueRange } from './hue-range.ts';
import { reduceChroma } from './ladder-search.ts';

/** Least difference of L* between two steps. */
const MIN_STEP_GAP = 1.5;

/**
 * Brings the six steps of a photograph within reach: maps them into the shelf's range of light and
 * dark if they leave it, separates equal ones, and keeps as much chroma as the shelf has there.
 * @param more how many times to widen the least gap
 * @returns null if the shelf does not have six lightnesses
 */
export function photoFoldTargets(
  ladder: readonly Lab[],
  shelf: Shelf,
  tones: HueRange,
  ends: { readonly deepest: number; readonly lightest: number },
  more = 0,
): readonly Lab[] | null {
  const room = ends.lightest - ends.deepest;
  const gap = Math.min(MIN_STEP_GAP * (1 + more), room / 5.5);
  if (!(gap > 0.2)) return null;
  const keyed = ladder.map(rangeMapping(ladder, shelf));
  const L = separateLightnesses(
    keyed.map((lab) => lab[0]),
    ends,
    gap,
  );
  return keyed.map(([, a, b], i) => {
    const lab: Lab = [L[i]!, a, b];
    return reduceChroma(lab, (one) => tones.isMixable(one)) ?? [L[i]!, 0, 0];
  });
}

/**
 * Separates lightnesses by at least `gap` within the ends, moving each as little as one pass down
 * and one pass up allow.
 */
function separateLightnesses(
  lightness: readonly number[],
  { deepest, lightest }: { readonly deepest: number; readonly lightest: number },
  gap: number,
): number[] {
  const last = lightness.length - 1;
  const L = lightness.map((value, i) =>
    Math.min(lightest - i * gap, Math.max(deepest + (last - i) * gap, value)),
  );
  // Separate pairs that are too close, from the local colour outwards.
  const from = Math.min(2, last);
  for (let i = from + 1; i <= last; i++) L[i] = Math.min(L[i]!, L[i - 1]! - gap);
  for (let i = from - 1; i >= 0; i--) L[i] = Math.max(L[i]!, L[i + 1]! + gap);
  const low = deepest - L[last]!;
  if (low > 0)
    for (let i = last, least = deepest; i >= 0; i--, least += gap) L[i] = Math.max(L[i]!, least);
  for (let i = 0, most = lightest; i <= last; i++, most -= gap) L[i] = Math.min(L[i]!, most);
  return L;
}
