import { differenceWords } from '../../../colour/describe-colour.ts';
import type { Cloth, Fold } from '../../../drapery/cloth-types.ts';
import { clothRemarkWords } from '../../../messages/drapery-messages.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { FullScreenColours } from '../../components/FullScreenColours.tsx';
import { RecipePiles } from '../../components/RecipePiles.tsx';
import { foldRecipe, foldWords, pigmentInSentence } from '../../state/drapery/cloth-text.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { BLACK_WHY, draperyTexts } from '../../texts/drapery-texts.ts';
import { sharedTexts as sayAll } from '../../texts/shared-texts.ts';
import { ColourStrokes } from './ColourStrokes.tsx';

/** A cloth's ladder: each step with its pile and glaze, then the rule of black and remarks. */
export function LadderSteps({ cloth }: { cloth: Cloth }) {
  const all = [...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])];
  return (
    <>
      <h3>{draperyTexts.steps}</h3>
      <ol class="drapery-steps">
        {all.map((fold) => (
          <li key={fold.step}>
            <details>
              <summary>
                <ColourStrokes hexes={[cssColourOf(fold.lab)]} />
                <span class="drapery-step">
                  <strong>{fold.step}</strong>
                  <span>{foldWords(fold)}</span>
                </span>
              </summary>
              <Recipe fold={fold} />
            </details>
          </li>
        ))}
      </ol>
      <BlackRuleText cloth={cloth} />
      {cloth.remarks.length > 0 && (
        <>
          <h3>{draperyTexts.remarks}</h3>
          <ul class="drapery-remarks">
            {cloth.remarks.map(clothRemarkWords).map((remark) => (
              <li key={remark}>{remark}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Recipe({ fold }: { fold: Fold }) {
  const { glaze, lab, wish, deltaE00, step } = fold;
  return (
    <div class="drapery-recipe">
      <RecipePiles bench={foldRecipe(fold)} mixed={glaze ? draperyTexts.beneath : step} />
      {glaze && (
        <p>
          {draperyTexts.filmAbout(
            pigmentInSentence(glaze.pigment),
            Math.round(1000 * glaze.filmMm),
          )}
        </p>
      )}
      <div class="drapery-beside">
        <ColourComparison
          wanted={{ name: draperyTexts.wanted, hex: cssColourOf(wish) }}
          mixed={{ name: draperyTexts.mixed, hex: cssColourOf(lab) }}
          reachable={deltaE00 <= 3}
        />
      </div>
      <p>
        <FullScreenColours
          colours={[
            { name: draperyTexts.wanted, lab: wish },
            { name: draperyTexts.mixed, lab },
          ]}
        />
      </p>
      <p class="small">
        {sayAll.differs[differenceWords(deltaE00)]} {draperyTexts.ciede(deltaE00)}
        {deltaE00 > 3 && ` ${draperyTexts.outOfReach}`}
      </p>
    </div>
  );
}

/** Whether this cloth may take black, and the chroma that deepening with black would lose. */
export function BlackRuleText({ cloth }: { cloth: Cloth }) {
  const { black, blackLoss } = cloth;
  const rule = black.why
    ? draperyTexts.blackMay(BLACK_WHY[black.why])
    : black.barred.length > 0
      ? draperyTexts.blackNone
      : draperyTexts.blackNoneHere;
  return (
    <div class="drapery-black">
      <h3>{draperyTexts.blackHeading}</h3>
      <p>{rule}</p>
      {blackLoss && (
        <p>
          {draperyTexts.blackLoss(
            pigmentInSentence(blackLoss.black),
            blackLoss.step,
            Math.round(blackLoss.withBlack),
            Math.round(blackLoss.chroma),
          )}
        </p>
      )}
    </div>
  );
}
