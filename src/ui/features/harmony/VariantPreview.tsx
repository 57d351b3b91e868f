import { useSignal } from '@preact/signals';
import type { MixedVariant } from '../../../harmony/mixed-variant.ts';
import { pileChangeWords } from '../../../messages/pile-change-text.ts';
import { limitWords } from '../../../messages/variant-limits.ts';
import { measuredRecipeOf } from '../../../mixture/measured-recipe.ts';
import { sentenceNamesOn } from '../../../pigment/sentence-names.ts';
import { afterPaint } from '../../components/after-paint.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { RecipePiles } from '../../components/RecipePiles.tsx';
import {
  applyVariants,
  harmonyColours,
  selectedIndex,
} from '../../state/harmony/current-harmony.ts';
import { previewHarmonyVariant } from '../../state/harmony/variant-jobs.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { shelf } from '../../state/studio.ts';
import { VARIANT_AMOUNT_WORDS, VARIANT_WAY_WORDS } from '../../texts/shared-texts.ts';
import { variantTexts } from '../../texts/variant-texts.ts';

/**
 * Preview of a variant beside its origin, each with its piles, and the change in words.
 * @param name of the colour
 */
export function VariantPreview({ made, name }: { made: MixedVariant; name: string }) {
  const { way, amount, origin, mixture, granted } = made;
  const on = shelf.value;
  const isTaken = useSignal(false);
  const words = variantTexts.variant(VARIANT_WAY_WORDS[way], VARIANT_AMOUNT_WORDS[amount]);
  const [before, after] = [measuredRecipeOf(origin.mixture, on), measuredRecipeOf(mixture, on)];
  return (
    <div class="variant-preview">
      <h3>
        {name}, {words}
      </h3>
      <div class="vary-pair">
        <RecipePiles bench={before} mixed={variantTexts.asItIs} />
        {granted !== 'nothing' && <RecipePiles bench={after} mixed={VARIANT_WAY_WORDS[way]} />}
      </div>
      {granted !== 'nothing' && (
        <ColourComparison
          wanted={{ name: variantTexts.asItIs, hex: cssColourOf(before.lab) }}
          mixed={{ name: VARIANT_WAY_WORDS[way], hex: cssColourOf(after.lab) }}
          class="vary-patch"
        />
      )}
      <ChangeWords made={made} />
      <p class="mix-buttons">
        {granted !== 'nothing' && (
          <button
            type="button"
            class="main"
            disabled={isTaken.value}
            onClick={() => {
              isTaken.value = true;
              const at = selectedIndex.value;
              afterPaint(() => applyVariants([{ at, made }]));
            }}
          >
            {variantTexts.take}
          </button>
        )}
        {harmonyColours.value.length > 1 && (
          <button type="button" onClick={() => void previewHarmonyVariant({ way, amount })}>
            {variantTexts.askWhole}
          </button>
        )}
      </p>
    </div>
  );
}

/** Change of a variant in words: visible difference, mixture, and limits of the shelf. */
export function ChangeWords({ made }: { made: MixedVariant }) {
  const { granted, samePigments, pile, seen } = made;
  const limit = limitWords(made);
  if (granted === 'nothing' || seen === '') return <p>{limit || variantTexts.unchanged}</p>;
  return (
    <p>
      {variantTexts.eye(seen)}{' '}
      {variantTexts.inPile(pileChangeWords(pile, sentenceNamesOn(shelf.value)))}{' '}
      {samePigments && variantTexts.same} {limit}
    </p>
  );
}
