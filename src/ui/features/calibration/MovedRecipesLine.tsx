import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FitFound } from '../../../../workers/calibration.ts';
import { acceptCalibration } from '../../../calibration/accept-calibration.ts';
import { changedRecipes } from '../../../pigment/changed-recipes.ts';
import { mixtureShelfOf } from '../../../pigment/mixing-shelf.ts';
import { book, bookRevision, shelf } from '../../state/studio.ts';
import { calibrationTexts, today } from '../../texts/calibration-texts.ts';
import { type KeptRecipe, recipesWith } from '../shelf/recipes-in-book.ts';
import { ownStock } from '../shelf/stock-state.ts';

/** Number of recipes in the book whose colour would change if these curves were accepted. */
export function MovedRecipesLine({ fit }: { fit: FitFound }) {
  const recipes = useSignal<readonly KeptRecipe[] | null>(null);
  const present = bookRevision.value;
  useEffect(() => {
    const here = book.peek();
    // Read again after every change of the book.
    if (!here) return;
    void recipesWith(here, null).then((found) => {
      if (found.ok) recipes.value = found.value;
    });
  }, [present]);
  const after = acceptCalibration(ownStock.value, fit, today());
  if (!recipes.value || !after.ok || recipes.value.length === 0) return null;
  const { moved } = changedRecipes(recipes.value, shelf.value, mixtureShelfOf(after.value));
  return <p>{calibrationTexts.recipesMove(moved.length, recipes.value.length)}</p>;
}
