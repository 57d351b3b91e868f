import type { Cloth, Fold } from '../../../drapery/cloth-types.ts';
import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { LADDER_STEPS } from '../../../harmony/harmony.ts';
import { type MeasuredRecipe, measuredRecipeOf } from '../../../mixture/measured-recipe.ts';
import { sentenceNamesOn } from '../../../pigment/sentence-names.ts';
import { recipeWords } from '../../components/drawn/alternative-text.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { cssColourOf } from '../screen-colour.ts';
import { shelf } from '../studio.ts';

/** The pigment's label on the shelf; its id if the shelf lacks it. */
export const shelfPigmentLabel = (pigment: string): string =>
  shelf.value.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;

/** A pigment's name inside a sentence. */
export const pigmentInSentence = (pigment: string): string => sentenceNamesOn(shelf.value)(pigment);

/** Colour difference (CIEDE2000) above which a step is marked out of reach: "plain" in words. */
const OUT_OF_REACH_DELTA_E = 3;

/** A cloth's ladder in display colours. */
export const drawnLadderOf = ({ folds }: Cloth): DrawnLadder =>
  folds.map(({ lab, share, deltaE00 }, i) => ({
    step: LADDER_STEPS[i]!,
    hex: cssColourOf(lab),
    share,
    reachable: deltaE00 <= OUT_OF_REACH_DELTA_E,
  }));

/** A fold's recipe in whole parts, laid out for the knife. */
export const foldRecipe = ({ mixture }: Fold): MeasuredRecipe =>
  measuredRecipeOf(mixture, shelf.value);

/** A fold's pile in words. */
const foldPileWords = ({ mixture }: Fold): string => recipeWords(mixture, pigmentInSentence);

/** A fold's pile in words, with the glaze over it. */
export const foldWords = (fold: Fold): string =>
  fold.glaze
    ? `${foldPileWords(fold)}; ${draperyTexts.film(pigmentInSentence(fold.glaze.pigment), Math.round(1000 * fold.glaze.filmMm))}`
    : foldPileWords(fold);
