import type { Entry } from '../../book/record.ts';
import { keptCurveOf } from '../../pigment/mixable.ts';
import { ownStock } from '../shelf/state.ts';
import { dayWords, saySwatches } from '../words/swatches.ts';
import { Accuracy } from './Accuracy.tsx';
import { CardLine } from './CardLine.tsx';
import { removeEntry } from './cards.ts';
import { isNews, lessons } from './records.ts';
import { hrefTo } from './routes.ts';
import { Suggested } from './Suggested.tsx';

/** Overview of calibration: what is known of the studio's paints, and the ways to add evidence. */
export function Overview() {
  const { cards, curves, piles } = lessons.value!;
  const { entries } = ownStock.value;
  const known = entries.filter((entry) => keptCurveOf(ownStock.value, entry) !== null).length;
  const hasAny = cards.some(({ body }) => body.reading) || curves.length + piles.length > 0;
  return (
    <>
      <h1 tabIndex={-1}>{saySwatches.heading}</h1>
      <p class="lead">{saySwatches.lead}</p>
      <section class="swatch-section">
        <h2>{saySwatches.cardsHeading}</h2>
        <p>{saySwatches.cardsAbout}</p>
        <p>
          <a class={isNews.value ? 'button' : 'button main'} href={hrefTo('new')}>
            {saySwatches.newCard}
          </a>
        </p>
        {cards.length === 0 ? (
          <p class="small">{saySwatches.noCards}</p>
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
        <h2>{saySwatches.learntHeading}</h2>
        <p>{saySwatches.learntOf(known, entries.length)}</p>
        {hasAny && isNews.value && <p role="status">{saySwatches.news}</p>}
        {hasAny && (
          <p>
            <a class={isNews.value ? 'button main' : 'button'} href={hrefTo('fit')}>
              {saySwatches.compare}
            </a>
          </p>
        )}
        {hasAny && <Suggested />}
      </section>
      <section class="swatch-section">
        <h2>{saySwatches.pilesHeading}</h2>
        <p>{saySwatches.pilesAbout}</p>
        <p>
          <a class="button" href={hrefTo('pile')}>
            {saySwatches.logPile}
          </a>
        </p>
        <Accuracy />
      </section>
      <section class="swatch-section">
        <h2>{saySwatches.curvesHeading}</h2>
        <p>{saySwatches.curvesAbout}</p>
        <p>
          <a class="button" href={hrefTo('curves')}>
            {saySwatches.bringCurves}
          </a>
        </p>
        {curves.length === 0 && <p class="small">{saySwatches.noCurves}</p>}
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
                      {saySwatches.samplesOf(used, samples.length)},{' '}
                      {saySwatches.measuredOn(dayWords(date))}
                    </span>
                  </span>
                  <button
                    type="button"
                    class="quiet"
                    aria-label={`${saySwatches.remove}: ${name}`}
                    onClick={() => void removeEntry(file)}
                  >
                    {saySwatches.remove}
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
