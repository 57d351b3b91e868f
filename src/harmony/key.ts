import type { Lab } from '../colour/lab.ts';
import { masstonesOf } from '../pigment/near.ts';
import type { Shelf } from '../pigment/shelf.ts';

/** L* of the darkest and of the lightest masstone on a shelf. */
export function rangeOf(shelf: Shelf): { darkest: number; lightest: number } {
  const values = masstonesOf(shelf).map(({ lab }) => lab[0]);
  return { darkest: Math.min(...values), lightest: Math.max(...values) };
}

/**
 * How a harmony is keyed to a shelf: L* mapped linearly from the range of its colours to the shelf's,
 * and chroma by the same factor, so that its intervals keep their proportions. A harmony that already
 * lies inside the shelf's range stays as it is: a misty morning is not stretched into full contrast.
 * @param labs the colours as gathered, CIELAB under D65; they set the range once, so that altering one
 *             colour later never moves the others
 */
export function keyOf(labs: readonly Lab[], shelf: Shelf): (lab: Lab) => Lab {
  const { darkest, lightest } = rangeOf(shelf);
  const from = Math.min(darkest, ...labs.map(([L]) => L));
  const to = Math.max(lightest, ...labs.map(([L]) => L));
  // One pigment has no range to map to.
  const factor = lightest > darkest ? (lightest - darkest) / (to - from) : 1;
  return ([L, a, b]) =>
    factor === 1 ? [L, a, b] : [darkest + (L - from) * factor, a * factor, b * factor];
}
