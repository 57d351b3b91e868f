import './mixtures.css';
import type { Lab } from '../../../colour/lab.ts';
import { measuredRecipeOf } from '../../../mixture/measured-recipe.ts';
import type { Mixture, MixtureAnswer } from '../../../mixture/mixture-types.ts';
import { mixingPreferences } from '../../state/harmony/mixing-decisions.ts';
import { shelf } from '../../state/studio.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';
import { AlternativeMixtures } from './AlternativeMixtures.tsx';
import { CorrectPile } from './CorrectPile.tsx';
import { LimitedPalette } from './LimitedPalette.tsx';
import { OutOfReach } from './OutOfReach.tsx';
import { PileAmounts } from './PileAmounts.tsx';
import { PreferencesForm } from './PreferencesForm.tsx';

/**
 * Amounts, alternatives, reach and correction of the selected colour's mixture.
 * @param inUse the mixture in use
 * @param shown the mixture on the screen, which may be the closest instead
 */
export function MixtureTools({
  target,
  colour,
  answer,
  inUse,
  shown,
}: {
  target: Lab;
  colour: string;
  answer: MixtureAnswer;
  inUse: Mixture;
  shown: Mixture;
}) {
  const bench = measuredRecipeOf(shown, shelf.value);
  return (
    <div class="mix-more">
      <PileAmounts bench={bench} />
      <AlternativeMixtures target={target} colour={colour} answer={answer} inUse={inUse} />
      {(!answer.reachable || mixingPreferences.value.keep !== 'nearest') && (
        <OutOfReach target={target} />
      )}
      <CorrectPile target={target} bench={bench} />
    </div>
  );
}

/** Preferences and limited palette, which apply to all mixtures of the harmony. */
export function HarmonyMixingTools() {
  return (
    <section class="bench mix-more" aria-labelledby="mix-heading">
      <h2 id="mix-heading">{mixtureTexts.allHeading}</h2>
      <PreferencesForm />
      <LimitedPalette />
    </section>
  );
}
