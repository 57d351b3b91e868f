import { differenceWords } from '../../../colour/describe-colour.ts';
import { shortfallWords } from '../../../messages/mixture-messages.ts';
import { glazingPigmentOf } from '../../../mixture/glazing.ts';
import { measuredRecipeOf } from '../../../mixture/measured-recipe.ts';
import {
  type Mixture,
  type MixtureAnswer,
  REACHABLE_DELTA_E,
} from '../../../mixture/mixture-types.ts';
import { ofParts } from '../../../mixture/predict.ts';
import { shortfallOf } from '../../../mixture/shortfall.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { FullScreenColours } from '../../components/FullScreenColours.tsx';
import { LetDowns, RecipePileRow } from '../../components/RecipePiles.tsx';
import { cssColourOf } from '../../state/screen-colour.ts';
import { shelfLabelOf } from '../../state/shelf-labels.ts';
import { shelf } from '../../state/studio.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { ExpectedError } from '../calibration/ExpectedError.tsx';

/** Piles of one mixture, its colour beside the target, and the difference in words. */
export function MixturePiles({
  answer,
  mixture,
  heading,
}: {
  answer: MixtureAnswer;
  mixture: Mixture;
  heading: string;
}) {
  const on = shelf.value;
  const wanted = answer.target;
  const bench = measuredRecipeOf(mixture, on);
  const mixed = { name: sharedTexts.mixed, hex: cssColourOf(bench.lab) };
  const film = glazingPigmentOf(ofParts(bench.pigments), on);
  // Only the closest mixture proves a shortfall of the shelf; a simpler one may miss by choice.
  const shortfall = mixture.reachable ? null : shortfallOf(wanted, answer);
  return (
    <div class="piles">
      <h3>{heading}</h3>
      <div class="piles-drawn">
        <RecipePileRow bench={bench} mixed={sharedTexts.mixed} />
        <div class="beside-held">
          <ColourComparison
            wanted={{ name: sharedTexts.wanted, hex: cssColourOf(wanted) }}
            mixed={mixed}
            reachable={mixture.reachable || answer.reachable}
          />
          <FullScreenColours
            colours={[
              { name: sharedTexts.wanted, lab: wanted },
              { name: sharedTexts.mixed, lab: bench.lab },
            ]}
          />
        </div>
      </div>
      <p>{sharedTexts.differs[differenceWords(bench.deltaE00)]}</p>
      <ExpectedError parts={bench.pigments} />
      {film && <p>{mixtureTexts.film(shelfLabelOf(film, on))}</p>}
      {bench.deltaE00 > REACHABLE_DELTA_E &&
        measuredRecipeOf(answer, on).deltaE00 <= REACHABLE_DELTA_E && (
          <p>{sharedTexts.closestReaches}</p>
        )}
      {shortfall && <p>{shortfallWords(shortfall)}</p>}
      <LetDowns bench={bench} />
    </div>
  );
}
