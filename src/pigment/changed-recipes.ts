import { deltaE00 } from '../colour/difference.ts';
import { type Reflectance, spectrum } from '../colour/grid.ts';
import { type Lab, labOf } from '../colour/lab.ts';
import { opaque } from '../optics/opaque.ts';
import { addSurface } from '../optics/surface.ts';
import type { Shelf } from './shelf.ts';

/** A stored recipe: pigments of a shelf, in parts by volume. */
export interface Recipe {
  readonly id: string;
  readonly parts: readonly { readonly pigment: string; readonly parts: number }[];
}

/** A recipe whose predicted colour differs between two shelves. */
export interface RecipeChange {
  readonly id: string;
  readonly before: Lab;
  readonly after: Lab;
  readonly deltaE00: number;
}

/**
 * Predicted colour of a recipe; null if the shelf lacks one of its pigments or no part is above 0.
 */
export function recipeColourOf({ parts }: Recipe, shelf: Shelf): Lab | null {
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
 * Recipes whose predicted colour changes with the shelf (a lot replaced, a paint calibrated),
 * largest change first.
 * @param limit changes up to this CIEDE2000 are ignored; up to 1 none is visible
 * @returns the moved recipes, and the ids of those that only the old shelf can mix
 */
export function changedRecipes(
  recipes: readonly Recipe[],
  before: Shelf,
  after: Shelf,
  limit = 1,
): { readonly moved: readonly RecipeChange[]; readonly lost: readonly string[] } {
  const moved: RecipeChange[] = [];
  const lost: string[] = [];
  for (const recipe of recipes) {
    const [was, is] = [recipeColourOf(recipe, before), recipeColourOf(recipe, after)];
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
