import type { BookFault } from '../../../book/schema/book-fault.ts';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import type { Book } from '../../../book/store/open-book.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import {
  changedRecipes,
  type Recipe,
  type RecipeChange,
} from '../../../pigment/changed-recipes.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { ok, type Result } from '../../../result.ts';

/** A recipe in the book, with the entry that contains it. */
export interface KeptRecipe extends Recipe {
  /** Name of the mixed colour, such as "grey blue". */
  readonly name: string;
  /** Name of the entry that contains it. */
  readonly entry: string;
  /** Id of that entry when it is a harmony, which a screen can open; otherwise null. */
  readonly harmony: string | null;
}

/**
 * All recipes in the book, or those that use one paint; most recently changed entries first.
 * @param pigment name of the paint; null for all recipes
 */
export async function recipesWith(
  book: Book,
  pigment: string | null,
): Promise<Result<readonly KeptRecipe[], BookFault>> {
  const cards = await book.list();
  if (!cards.ok) return cards;
  const recipes: KeptRecipe[] = [];
  const uses = (pigments: readonly string[]) => pigment === null || pigments.includes(pigment);
  for (const card of cards.value.filter(({ pigments }) => uses(pigments))) {
    for (const { name, mixture } of await mixturesOf(book, card)) {
      const used = mixture?.parts.filter((part) => part.parts > 0) ?? [];
      if (used.length === 0 || !uses(used.map((part) => part.pigment))) continue;
      recipes.push({
        id: `${card.id}/${recipes.length}`,
        parts: mixture!.parts,
        name,
        entry: card.name,
        harmony: card.kind === 'harmony' ? card.id : null,
      });
    }
  }
  return ok(recipes);
}

interface Named {
  readonly name: string;
  readonly mixture?: Mixture;
}

/** The chosen mixtures in an entry; empty when the entry cannot be read. */
async function mixturesOf(book: Book, { id, kind }: EntrySummary): Promise<readonly Named[]> {
  switch (kind) {
    case 'harmony': {
      const found = await book.get(kind, id);
      return found.ok ? found.value.body.colours : [];
    }
    case 'drapery': {
      const found = await book.get(kind, id);
      if (!found.ok) return [];
      return found.value.body.garments.flatMap(({ name, folds }) =>
        folds.map(({ step, ...fold }) => ({ ...fold, name: `${name}, ${step}` })),
      );
    }
    case 'formula': {
      const found = await book.get(kind, id);
      if (!found.ok) return [];
      return found.value.body.passages.flatMap(({ name, layers }) =>
        layers.map(({ film, mixture }) => ({ name: `${name}, ${film}`, mixture })),
      );
    }
    case 'passage': {
      const found = await book.get(kind, id);
      return found.ok ? found.value.body.piles : [];
    }
    case 'palette': {
      const found = await book.get(kind, id);
      return found.ok ? found.value.body.piles : [];
    }
    default:
      return [];
  }
}

/**
 * The recipes whose colour changes by more than CIEDE2000 1 when one paint of the shelf is
 * replaced, largest change first.
 */
export function movedBy(
  recipes: readonly KeptRecipe[],
  shelf: Shelf,
  pigment: string,
  paint: Shelf['paints'][number]['paint'],
): readonly (RecipeChange & { readonly recipe: KeptRecipe })[] {
  const after: Shelf = {
    ...shelf,
    paints: shelf.paints.map((each) => (each.pigment === pigment ? { ...each, paint } : each)),
  };
  return changedRecipes(recipes, shelf, after).moved.map((moved) => ({
    ...moved,
    recipe: recipes.find(({ id }) => id === moved.id)!,
  }));
}
