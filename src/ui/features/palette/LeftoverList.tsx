import { cm3Words } from '../../../messages/amounts.ts';
import { LEFTOVER_WORDS } from '../../../messages/palette-messages.ts';
import { daysBetween } from '../../../palette/iso-date.ts';
import { leftoverState } from '../../../palette/leftovers.ts';
import { joinWords } from '../../../wording.ts';
import { dateWords, formatNumber, today } from '../../state/locale-format.ts';
import { offeredLeftovers, plannedDate } from '../../state/palette/day-entries.ts';
import { leftoverFromEntry } from '../../state/palette/palette-records.ts';
import { dayPlan } from '../../state/palette/plan-job.ts';
import { LEFTOVER_STORAGE_WORDS, paletteTexts } from '../../texts/palette-texts.ts';
import { changeLeftover } from './record-day-end.ts';

/** Leftovers of earlier days, to be used first or discarded. */
export function LeftoverList() {
  const before = offeredLeftovers.value.filter(
    ({ body }) => daysBetween(body.date.slice(0, 10), plannedDate.value) > 0,
  );
  if (before.length === 0) return null;
  const offers = dayPlan.value?.day.palettes.flatMap((palette) => palette.offers) ?? [];
  return (
    <section class="pal-leftovers" aria-label={paletteTexts.useFirst}>
      <h2>{paletteTexts.useFirst}</h2>
      <ul class="pal-lines">
        {before.map((entry) => {
          const left = leftoverFromEntry(entry);
          const state = leftoverState(left, plannedDate.value);
          const serves = offers.find(({ leftover }) => leftover.id === entry.id)?.piles ?? [];
          const goes = state === 'past' || state === 'skinned' || state === 'spoilt';
          return (
            <li key={entry.id}>
              {paletteTexts.leftOf(
                left.name,
                cm3Words(left.cm3, formatNumber),
                LEFTOVER_STORAGE_WORDS[left.kept],
                dateWords(left.date),
                LEFTOVER_WORDS[state],
              )}
              {serves.length > 0 &&
                paletteTexts.servesPiles(joinWords(serves.map((name) => `“${name}”`)))}
              <span class="pal-actions">
                {!goes && (
                  <button
                    type="button"
                    aria-label={`${paletteTexts.usedUp}: ${left.name}`}
                    onClick={() =>
                      void changeLeftover(
                        entry,
                        { used: today() },
                        paletteTexts.usedSaid(left.name),
                      )
                    }
                  >
                    {paletteTexts.usedUp}
                  </button>
                )}
                {!left.skinned && (
                  <button
                    type="button"
                    class="quiet"
                    aria-label={`${paletteTexts.hasSkin}: ${left.name}`}
                    onClick={() =>
                      void changeLeftover(
                        entry,
                        { skinned: true },
                        paletteTexts.skinSaid(left.name),
                      )
                    }
                  >
                    {paletteTexts.hasSkin}
                  </button>
                )}
                {goes && (
                  <button
                    type="button"
                    aria-label={`${paletteTexts.discard}: ${left.name}`}
                    onClick={() =>
                      void changeLeftover(
                        entry,
                        { used: today() },
                        paletteTexts.usedSaid(left.name),
                      )
                    }
                  >
                    {paletteTexts.discard}
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
