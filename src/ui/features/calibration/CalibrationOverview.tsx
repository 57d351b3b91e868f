import type { Entry } from '../../../book/schema/record.ts';
import { studioCurveOf } from '../../../pigment/mixing-shelf.ts';
import { evidenceEntries, hasNewEvidence } from '../../state/calibration/evidence.ts';
import { calibrationTexts, dayWords } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { CardLine } from './CardLine.tsx';
import { hrefTo } from './calibration-routes.ts';
import { LoggedPiles } from './LoggedPiles.tsx';
import { SuggestedSwatches } from './SuggestedSwatches.tsx';
import { binEntry } from './swatch-cards.ts';

/** Overview of calibration: what is known of the studio's paints, and the ways to add evidence. */
export function CalibrationOverview() {
  const { cards, curves, piles } = evidenceEntries.value!;
  const { entries } = ownStock.value;
  const known = entries.filter((entry) => studioCurveOf(ownStock.value, entry) !== null).length;
  const hasAny = cards.some(({ body }) => body.reading) || curves.length + piles.length > 0;
  return (
    <>
      <h1 tabIndex={-1}>{calibrationTexts.heading}</h1>
      <p class="lead">{calibrationTexts.lead}</p>
      <section class="swatch-section">
        <h2>{calibrationTexts.cardsHeading}</h2>
        <p>{calibrationTexts.cardsAbout}</p>
        <p>
          <a class={hasNewEvidence.value ? 'button' : 'button main'} href={hrefTo('new')}>
            {calibrationTexts.newCard}
          </a>
        </p>
        {cards.length === 0 ? (
          <p class="small">{calibrationTexts.noCards}</p>
        ) : (
          <ul class="swatch-cards">
            {cards.toSorted(pagesInTurn).map((card) => (
              <li key={card.id}>
                <CardLine card={card} />
              </li>
            ))}
          </ul>
        )}
      </section>
      <section class="swatch-section">
        <h2>{calibrationTexts.learntHeading}</h2>
        <p>{calibrationTexts.learntOf(known, entries.length)}</p>
        {hasAny && hasNewEvidence.value && <p role="status">{calibrationTexts.news}</p>}
        {hasAny && (
          <p>
            <a class={hasNewEvidence.value ? 'button main' : 'button'} href={hrefTo('fit')}>
              {calibrationTexts.compare}
            </a>
          </p>
        )}
        {hasAny && <SuggestedSwatches />}
      </section>
      <section class="swatch-section">
        <h2>{calibrationTexts.pilesHeading}</h2>
        <p>{calibrationTexts.pilesAbout}</p>
        <p>
          <a class="button" href={hrefTo('pile')}>
            {calibrationTexts.logPile}
          </a>
        </p>
        <LoggedPiles />
      </section>
      <section class="swatch-section">
        <h2>{calibrationTexts.curvesHeading}</h2>
        <p>{calibrationTexts.curvesAbout}</p>
        <p>
          <a class="button" href={hrefTo('curves')}>
            {calibrationTexts.bringCurves}
          </a>
        </p>
        {curves.length === 0 && <p class="small">{calibrationTexts.noCurves}</p>}
        {curves.length > 0 && (
          <ul class="swatch-lines">
            {curves.map((file) => {
              const { name, date, samples } = file.body;
              const used = samples.filter(({ parts }) => parts.length > 0).length;
              return (
                <li key={file.id} class="swatch-file">
                  <span>
                    <a href={hrefTo('curves', file.id)}>{name}</a>
                    <br />
                    <span class="small">
                      {calibrationTexts.samplesOf(used, samples.length)},{' '}
                      {calibrationTexts.measuredOn(dayWords(date))}
                    </span>
                  </span>
                  <button
                    type="button"
                    class="quiet"
                    aria-label={`${calibrationTexts.remove}: ${name}`}
                    onClick={() => void binEntry(file)}
                  >
                    {calibrationTexts.remove}
                  </button>
                </li>
              );
            })}
          </ul>
        )}
      </section>
    </>
  );
}

/** Newest card first; pages of one card in their order. */
const pagesInTurn = (p: Entry<'card'>, q: Entry<'card'>): number =>
  p.body.plan.name === q.body.plan.name ? p.body.plan.page - q.body.plan.page : 0;
