import { differenceWords } from '../../colour/words.ts';
import type { Cloth, Fold } from '../../drapery/fold.ts';
import { BesideWanted } from '../drawn/BesideWanted.tsx';
import { shownOf } from '../drawn/screen.ts';
import { LaidPiles } from '../harmony/LaidPiles.tsx';
import { HoldUp } from '../held/HoldUp.tsx';
import { BLACK_WHY, say } from '../words/drapery.ts';
import { say as sayAll } from '../words/frame.ts';
import { Dab } from './Dab.tsx';
import { benchOfFold, foldWords, spoken } from './spoken.ts';

/** A cloth's ladder: each step with its pile and glaze, then the rule of black and remarks. */
export function Steps({ cloth }: { cloth: Cloth }) {
  const all = [...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])];
  return (
    <>
      <h3>{say.steps}</h3>
      <ol class="drapery-steps">
        {all.map((fold) => (
          <li key={fold.step}>
            <details>
              <summary>
                <Dab hexes={[shownOf(fold.lab)]} />
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
      <BlackWords cloth={cloth} />
      {cloth.remarks.length > 0 && (
        <>
          <h3>{say.remarks}</h3>
          <ul class="drapery-remarks">
            {cloth.remarks.map((remark) => (
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
      <LaidPiles bench={benchOfFold(fold)} mixed={glaze ? say.beneath : step} />
      {glaze && <p>{say.filmAbout(spoken(glaze.pigment), Math.round(1000 * glaze.filmMm))}</p>}
      <div class="drapery-beside">
        <BesideWanted
          wanted={{ name: say.wanted, hex: shownOf(wish) }}
          mixed={{ name: say.mixed, hex: shownOf(lab) }}
          reachable={deltaE00 <= 3}
        />
      </div>
      <p>
        <HoldUp
          colours={[
            { name: say.wanted, lab: wish },
            { name: say.mixed, lab },
          ]}
        />
      </p>
      <p class="small">
        {sayAll.differs[differenceWords(deltaE00)]} {say.ciede(deltaE00)}
        {deltaE00 > 3 && ` ${say.outOfReach}`}
      </p>
    </div>
  );
}

/** Whether this cloth may take black, and the chroma that deepening with black would lose. */
export function BlackWords({ cloth }: { cloth: Cloth }) {
  const { black, blackLoss } = cloth;
  const rule = black.why
    ? say.blackMay(BLACK_WHY[black.why])
    : black.barred.length > 0
      ? say.blackNone
      : say.blackNoneHere;
  return (
    <div class="drapery-black">
      <h3>{say.blackHeading}</h3>
      <p>{rule}</p>
      {blackLoss && (
        <p>
          {say.blackLoss(
            spoken(blackLoss.black),
            blackLoss.step,
            Math.round(blackLoss.withBlack),
            Math.round(blackLoss.chroma),
          )}
        </p>
      )}
    </div>
  );
}
