import { useEffect } from 'preact/hooks';
import { differenceWords } from '../../colour/words.ts';
import { median } from '../../pigment/calibrate/sample.ts';
import { WorkLine } from '../harmony/mix/WorkLine.tsx';
import { said } from '../locale.ts';
import { saySwatches } from '../words/swatches.ts';
import { before } from './before.ts';
import { acceptFound, fitFault, fitNow, fitting, found } from './fitting.ts';
import { leaveOut } from './keeping.ts';
import { MovedLine } from './MovedLine.tsx';
import { learnt, lessons } from './records.ts';
import { goTo, hrefTo } from './routes.ts';
import { SeenOnly } from './SeenOnly.tsx';
import { SwatchLine } from './SwatchLine.tsx';
import { TrustChange } from './TrustChange.tsx';

/**
 * Preview of a calibration fit: each swatch as observed beside the prediction of the new curves,
 * before anything is accepted.
 */
export function FitScreen() {
  const of = learnt.value;
  useEffect(() => {
    void fitNow();
  }, [of]);
  const fit = found.value;
  const piles = of?.swatches.filter(({ logged }) => logged).length ?? 0;
  return (
    <>
      <h1 tabIndex={-1}>{saySwatches.fitHeading}</h1>
      {of && of.swatches.length > 0 && (
        <p class="lead">{saySwatches.fitLead(of.swatches.length - piles, piles)}</p>
      )}
      {of && of.ofOthers > 0 && <p>{saySwatches.ofOthers(of.ofOthers)}</p>}
      <WorkLine work={fitting} words={saySwatches.fitting} />
      {fitFault.value && (
        <p class="field-fault" role="alert">
          {said(fitFault.value)}
        </p>
      )}
      {of && !fit && !fitFault.value && fitting.progress.value === null && (
        <p>
          <button type="button" onClick={() => void fitNow()}>
            {saySwatches.fitAgain}
          </button>
        </p>
      )}
      {fit && <Compared />}
      {!fit && fitFault.value && <SeenOnly />}
      <TakeIn />
    </>
  );
}

function Compared() {
  const fit = found.value!;
  const were = before.value;
  // Worst fit first.
  const lines = fit.swatches
    .map((swatch, i) => ({ swatch, was: were[i] ?? null }))
    .toSorted((p, q) => q.swatch.deltaE00 - p.swatch.deltaE00);
  const known = were.filter((was) => was !== null);
  return (
    <>
      <p role="status">
        {known.length > 0 &&
          saySwatches.fitSum(median(fit.swatches.map(({ deltaE00 }) => deltaE00)), median(known))}
      </p>
      <MovedLine fit={fit} />
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
          {saySwatches.accept}
        </button>
        <a class="button shelf-quiet" href={hrefTo()}>
          {saySwatches.leave}
        </a>
      </div>
      <section class="swatch-section">
        <h2>{saySwatches.swatchesHeading}</h2>
        <ul class="swatch-compared">
          {lines.map(({ swatch, was }) => (
            <li key={swatch.painted.id}>
              <SwatchLine
                swatch={swatch}
                was={was === null ? null : differenceWords(was)}
                paints={fit.paints}
              />
            </li>
          ))}
        </ul>
      </section>
      <section class="swatch-section">
        <h2>{saySwatches.trustHeading}</h2>
        <TrustChange fit={fit} />
      </section>
    </>
  );
}

/** Restores places that were left out. */
function TakeIn() {
  const some = (lessons.value?.cards ?? []).filter(({ body }) => body.leftOut.length > 0);
  if (some.length === 0) return null;
  return (
    <ul class="swatch-few">
      {some.map(({ id, body }) => (
        <li key={id}>
          {body.name}: {saySwatches.lefts(body.leftOut.length)}{' '}
          <button type="button" class="quiet" onClick={() => void leaveOut(id, [])}>
            {saySwatches.takeIn}
          </button>
        </li>
      ))}
    </ul>
  );
}
