import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FitFound } from '../../../workers/calibrate.ts';
import { accept } from '../../pigment/calibrate/calibrate.ts';
import { shelfOfStock } from '../../pigment/mixable.ts';
import { movedRecipes } from '../../pigment/moved.ts';
import { type KeptRecipe, recipesWith } from '../shelf/recipes.ts';
import { ownStock } from '../shelf/state.ts';
import { book, edition, shelf } from '../studio.ts';
import { saySwatches, today } from '../words/swatches.ts';

/** Number of recipes in the book whose colour would change if these curves were accepted. */
export function MovedLine({ fit }: { fit: FitFound }) {
  const recipes = useSignal<readonly KeptRecipe[] | null>(null);
  const present = edition.value;
  useEffect(() => {
    const here = book.peek();
    // Read again after every change of the book.
    if (!here) return;
    void recipesWith(here, null).then((found) => {
      if (found.ok) recipes.value = found.value;
    });
  }, [present]);
  const after = accept(ownStock.value, fit, today());
  if (!recipes.value || !after.ok || recipes.value.length === 0) return null;
  const { moved } = movedRecipes(recipes.value, shelf.value, shelfOfStock(after.value));
  return <p>{saySwatches.recipesMove(moved.length, recipes.value.length)}</p>;
}
