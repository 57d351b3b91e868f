import './mix.css';
import type { Lab } from '../../../colour/lab.ts';
import { measuredRecipeOf } from '../../../mixture/bench.ts';
import type { Mixture, MixtureAnswer } from '../../../mixture/mixture.ts';
import { shelf } from '../../studio.ts';
import { mixtureTexts } from '../../words/mixing.ts';
import { AlternativeMixtures } from './Alternatives.tsx';
import { mixingPreferences } from './decided.ts';
import { LimitedPalette } from './Limited.tsx';
import { PileAmounts } from './Measures.tsx';
import { CorrectPile } from './Mending.tsx';
import { OutOfReach } from './Reach.tsx';
import { PreferencesForm } from './Wishes.tsx';

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
