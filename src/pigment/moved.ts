import { deltaE00 } from '../colour/difference.ts';
import { type Reflectance, spectrum } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { opaque } from '../optics/opaque.ts';
import { addSurface } from '../optics/surface.ts';
import type { Shelf } from './shelf.ts';

/** A recipe as the book keeps it: pigments of a shelf, by parts. */
export interface Recipe {
  readonly id: string;
  readonly parts: readonly { readonly pigment: string; readonly parts: number }[];
}

/** A recipe that comes out otherwise on another shelf. */
export interface Moved {
  readonly id: string;
  readonly before: Lab;
  readonly after: Lab;
  readonly deltaE00: number;
}

/** What a recipe looks like on a shelf; null where the shelf lacks one of its pigments, or nothing is in it. */
export function colourOf({ parts }: Recipe, shelf: Shelf): Lab | null {
  const paints = parts.map(
    ({ pigment }) => shelf.paints.find((paint) => paint.pigment === pigment)?.paint,
  );
  if (paints.includes(undefined) || !parts.some((part) => part.parts > 0)) return null;
  const R: Reflectance = spectrum();
  opaque(
    parts.map((part) => part.parts),
    paints.filter((paint) => paint !== undefined),
    R,
  );
  return labOf(addSurface(R, shelf.surface));
}

/**
 * Which recipes move when a shelf changes (a lot replaced, a paint calibrated), most moved first.
 * @param limit a CIEDE2000 up to which nothing is said: none is seen up to 1
 * @returns the moved ones, and the ids of those that the new shelf cannot mix though the old one could
 */
export function movedRecipes(
  recipes: readonly Recipe[],
  before: Shelf,
  after: Shelf,
  limit = 1,
): { readonly moved: readonly Moved[]; readonly lost: readonly string[] } {
  const moved: Moved[] = [];
  const lost: string[] = [];
  for (const recipe of recipes) {
    const [was, is] = [colourOf(recipe, before), colourOf(recipe, after)];
    if (was === null) continue;
    if (is === null) {
      lost.push(recipe.id);
      continue;
    }
    const difference = deltaE00(was, is);
    if (difference > limit)
      moved.push({ id: recipe.id, before: was, after: is, deltaE00: difference });
  }
  return { moved: moved.toSorted((p, q) => q.deltaE00 - p.deltaE00), lost };
}
