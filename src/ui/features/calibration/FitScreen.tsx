import { useEffect } from 'preact/hooks';
import { median } from '../../../calibration/robust-mean.ts';
import { differenceWords } from '../../../colour/describe-colour.ts';
import { JobProgress } from '../../components/JobProgress.tsx';
import { currentEvidence, evidenceEntries } from '../../state/calibration/evidence.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { goTo, hrefTo } from './calibration-routes.ts';
import { acceptFound, fitFault, fitNow, fittedCurves, fitting } from './curve-fit.ts';
import { FittedSwatchLine } from './FittedSwatchLine.tsx';
import { MovedRecipesLine } from './MovedRecipesLine.tsx';
import { currentErrors } from './prediction-errors.ts';
import { leaveOut } from './save-reading.ts';
import { TrustChange } from './TrustChange.tsx';
import { UnfittedSwatches } from './UnfittedSwatches.tsx';

/**
 * Preview of a calibration fit: each swatch as observed beside the prediction of the new curves,
 * before anything is accepted.
 */
export function FitScreen() {
  const of = currentEvidence.value;
  useEffect(() => {
    void fitNow();
  }, [of]);
  const fit = fittedCurves.value;
  const piles = of?.swatches.filter(({ logged }) => logged).length ?? 0;
  return (
    <>
      <h1 tabIndex={-1}>{calibrationTexts.fitHeading}</h1>
      {of && of.swatches.length > 0 && (
        <p class="lead">{calibrationTexts.fitLead(of.swatches.length - piles, piles)}</p>
      )}
      {of && of.ofOthers > 0 && <p>{calibrationTexts.ofOthers(of.ofOthers)}</p>}
      <JobProgress work={fitting} words={calibrationTexts.fitting} />
      {fitFault.value && (
        <p class="field-fault" role="alert">
          {fitFault.value}
        </p>
      )}
      {of && !fit && !fitFault.value && fitting.progress.value === null && (
        <p>
          <button type="button" onClick={() => void fitNow()}>
            {calibrationTexts.fitAgain}
          </button>
        </p>
      )}
      {fit && <Compared />}
      {!fit && fitFault.value && <UnfittedSwatches />}
      <TakeIn />
    </>
  );
}

function Compared() {
  const fit = fittedCurves.value!;
  const were = currentErrors.value;
  // Worst fit first.
  const lines = fit.swatches
    .map((swatch, i) => ({ swatch, was: were[i] ?? null }))
    .toSorted((p, q) => q.swatch.deltaE00 - p.swatch.deltaE00);
  const known = were.filter((was) => was !== null);
  return (
    <>
      <p role="status">
        {known.length > 0 &&
          calibrationTexts.fitSum(
            median(fit.swatches.map(({ deltaE00 }) => deltaE00)),
            median(known),
          )}
      </p>
      <MovedRecipesLine fit={fit} />
      <div class="swatch-actions">
        <button
          type="button"
          class="main"
          onClick={() =>
            void acceptFound().then((done) => {
              if (done) goTo();
            })
          }
        >
          {calibrationTexts.accept}
        </button>
        <a class="button shelf-quiet" href={hrefTo()}>
          {calibrationTexts.leave}
        </a>
      </div>
      <section class="swatch-section">
        <h2>{calibrationTexts.swatchesHeading}</h2>
        <ul class="swatch-compared">
          {lines.map(({ swatch, was }) => (
            <li key={swatch.painted.id}>
              <FittedSwatchLine
                swatch={swatch}
                was={was === null ? null : differenceWords(was)}
                paints={fit.paints}
              />
            </li>
          ))}
        </ul>
      </section>
      <section class="swatch-section">
        <h2>{calibrationTexts.trustHeading}</h2>
        <TrustChange fit={fit} />
      </section>
    </>
  );
}

/** Restores places that were left out. */
function TakeIn() {
  const some = (evidenceEntries.value?.cards ?? []).filter(({ body }) => body.leftOut.length > 0);
  if (some.length === 0) return null;
  return (
    <ul class="swatch-few">
      {some.map(({ id, body }) => (
        <li key={id}>
          {body.name}: {calibrationTexts.lefts(body.leftOut.length)}{' '}
          <button type="button" class="quiet" onClick={() => void leaveOut(id, [])}>
            {calibrationTexts.takeIn}
          </button>
        </li>
      ))}
    </ul>
  );
}
