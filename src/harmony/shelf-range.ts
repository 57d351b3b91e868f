import type { Lab } from '../colour/lab.ts';
import { masstonesOf } from '../pigment/nearest-masstone.ts';
import type { Shelf } from '../pigment/shelf.ts';

/** L* of the darkest and of the lightest masstone on a shelf. */
export function shelfLightness(shelf: Shelf): { darkest: number; lightest: number } {
  const values = masstonesOf(shelf).map(({ lab }) => lab[0]);
  return { darkest: Math.min(...values), lightest: Math.max(...values) };
}

/**
 * Maps a harmony into a shelf's range: L* linearly from the range of its colours to the shelf's,
 * chroma by the same factor, which preserves the proportions of its intervals. A harmony already
 * within range stays unchanged: a misty morning is not stretched to full contrast.
 * @param labs colours as gathered, CIELAB under D65; they fix the range once, so that altering one
 *   colour later never moves the others
 * @returns the mapping of one colour
 */
export function rangeMapping(labs: readonly Lab[], shelf: Shelf): (lab: Lab) => Lab {
  const { darkest, lightest } = shelfLightness(shelf);
  const from = Math.min(darkest, ...labs.map(([L]) => L));
  const to = Math.max(lightest, ...labs.map(([L]) => L));
  // A single pigment has no range.
  const factor = lightest > darkest ? (lightest - darkest) / (to - from) : 1;
  return ([L, a, b]) =>
    factor === 1 ? [L, a, b] : [darkest + (L - from) * factor, a * factor, b * factor];
}
