import type { MeasuredRecipe } from '../../mixture/measured-recipe.ts';
import { cssColourOf } from '../state/screen-colour.ts';
import { masstoneDisplayColour, sentenceLabelOf, shelfLabelOf } from '../state/shelf-labels.ts';
import { shelf } from '../state/studio.ts';
import { mixtureTexts } from '../texts/mixture-texts.ts';
import { RecipeDrawing } from './drawn/RecipeDrawing.tsx';

/**
 * Piles of a recipe in whole parts, with each let-down in its own row.
 * @param mixed name of the result
 */
export function RecipePiles({ bench, mixed }: { bench: MeasuredRecipe; mixed: string }) {
  return (
    <div class="piles">
      <RecipePileRow bench={bench} mixed={mixed} />
      <LetDowns bench={bench} />
    </div>
  );
}

/** Props of one pile; `on` must contain the pigment. */
const heap = (pigment: string, parts: number, on: MeasuredRecipe['shelf']) => ({
  name: shelfLabelOf(pigment, on),
  hex: masstoneDisplayColour(pigment, on),
  parts,
});

/** One row of piles and the colour that they make. */
export function RecipePileRow({ bench, mixed }: { bench: MeasuredRecipe; mixed: string }) {
  return (
    <RecipeDrawing
      piles={bench.parts.map(({ pigment, parts }) => heap(pigment, parts, bench.shelf))}
      mixed={{ name: mixed, hex: cssColourOf(bench.lab) }}
    />
  );
}

/** Each let-down with its ratio and reason. */
export function LetDowns({ bench }: { bench: MeasuredRecipe }) {
  if (bench.letDowns.length === 0) return null;
  const on = shelf.value;
  return (
    <div class="mix-let-downs">
      {bench.letDowns.map(({ name, pigment, white, parts, whiteParts }) => (
        <div class="mix-let-down" key={name}>
          <RecipeDrawing
            piles={[heap(pigment, parts, on), heap(white, whiteParts, on)]}
            mixed={{
              name: shelfLabelOf(name, bench.shelf),
              hex: masstoneDisplayColour(name, bench.shelf),
            }}
          />
          <p>
            {mixtureTexts.letDown(
              shelfLabelOf(pigment, on),
              whiteParts,
              sentenceLabelOf(white, on),
            )}
          </p>
        </div>
      ))}
    </div>
  );
}
