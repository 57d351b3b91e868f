import { spectrum } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { D65, type Light } from '../colour/observer.ts';
import { opaque, type Paint } from '../optics/opaque.ts';
import { addSurface } from '../optics/surface.ts';
import type { Shelf } from '../pigment/shelf.ts';

/** An amount of one pigment: a share, parts or any other measure by volume of paste. */
export interface Amount {
  readonly pigment: string;
  readonly amount: number;
}

export const ofParts = (parts: readonly { pigment: string; parts: number }[]): Amount[] =>
  parts.map(({ pigment, parts: amount }) => ({ pigment, amount }));
export const ofShares = (recipe: readonly { pigment: string; share: number }[]): Amount[] =>
  recipe.map(({ pigment, share: amount }) => ({ pigment, amount }));

/** K and S of a pigment of the shelf. @throws RangeError when the shelf has no such pigment */
export function shelfPaintOf(pigment: string, shelf: Pick<Shelf, 'paints' | 'name'>): Paint {
  const found = shelf.paints.find((p) => p.pigment === pigment);
  if (!found) throw new RangeError(`no ${pigment} on ${shelf.name}`);
  return found.paint;
}

/**
 * Predicted colour (CIELAB) of an opaque pile, seen through the shelf's surface.
 * @param light CIELAB is relative to its white; no chromatic adaptation
 * @throws RangeError when an amount is not ≥ 0, none is above 0, or a pigment is not on the shelf
 */
export function predictColour(
  amounts: readonly Amount[],
  shelf: Pick<Shelf, 'paints' | 'name' | 'surface'>,
  light: Light = D65,
): Lab {
  const R = opaque(
    amounts.map((a) => a.amount),
    amounts.map((a) => shelfPaintOf(a.pigment, shelf)),
    spectrum<'R'>(),
  );
  return labOf(addSurface(R, shelf.surface), light);
}
