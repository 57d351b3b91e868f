import { daysBetween } from '../../palette/calendar.ts';
import { cm3Words } from '../../palette/figure.ts';
import { LEFTOVER_WORDS, leftoverState } from '../../palette/leftover.ts';
import { joinWords } from '../../wording.ts';
import { dateWords, said, today } from '../locale.ts';
import { KEPT_WORDS, sayPalette } from '../words/palette.ts';
import { date, leftovers } from './days.ts';
import { changeLeftover } from './ending.ts';
import { leftoverOf } from './kept.ts';
import { plan } from './planning.ts';

/** Leftovers of earlier days, to be used first or discarded. */
export function Leftovers() {
  const before = leftovers.value.filter(
    ({ body }) => daysBetween(body.date.slice(0, 10), date.value) > 0,
  );
  if (before.length === 0) return null;
  const offers = plan.value?.day.palettes.flatMap((palette) => palette.offers) ?? [];
  return (
    <section class="pal-leftovers" aria-label={sayPalette.useFirst}>
      <h2>{sayPalette.useFirst}</h2>
      <ul class="pal-lines">
        {before.map((entry) => {
          const left = leftoverOf(entry);
          const state = leftoverState(left, date.value);
          const serves = offers.find(({ leftover }) => leftover.id === entry.id)?.piles ?? [];
          const goes = state === 'past' || state === 'skinned' || state === 'spoilt';
          return (
            <li key={entry.id}>
              {sayPalette.leftOf(
                left.name,
                said(cm3Words(left.cm3)),
                KEPT_WORDS[left.kept],
                dateWords(left.date),
                LEFTOVER_WORDS[state],
              )}
              {serves.length > 0 &&
                sayPalette.servesPiles(joinWords(serves.map((name) => `“${name}”`)))}
              <span class="pal-actions">
                {!goes && (
                  <button
                    type="button"
                    aria-label={`${sayPalette.usedUp}: ${left.name}`}
                    onClick={() =>
                      void changeLeftover(entry, { used: today() }, sayPalette.usedSaid(left.name))
                    }
                  >
                    {sayPalette.usedUp}
                  </button>
                )}
                {!left.skinned && (
                  <button
                    type="button"
                    class="quiet"
                    aria-label={`${sayPalette.hasSkin}: ${left.name}`}
                    onClick={() =>
                      void changeLeftover(entry, { skinned: true }, sayPalette.skinSaid(left.name))
                    }
                  >
                    {sayPalette.hasSkin}
                  </button>
                )}
                {goes && (
                  <button
                    type="button"
                    aria-label={`${sayPalette.discard}: ${left.name}`}
                    onClick={() =>
                      void changeLeftover(entry, { used: today() }, sayPalette.usedSaid(left.name))
                    }
                  >
                    {sayPalette.discard}
                  </button>
                )}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
