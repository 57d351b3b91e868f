import { dayWords } from '../../palette/calendar.ts';
import { hazardOf, isToxic } from '../../palette/known.ts';
import type { Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { rules, settle, today } from './state.ts';
import { sayPalette } from './words.ts';

/** Who has read the data sheet of which toxic lot: one acknowledgement for each person and lot. */
export function Acknowledge({ day, studio }: { day: Day; studio: Studio }) {
  const lots = new Map<string, { pigment: string; lot: string; words: string }>();
  for (const { key, label, supply } of day.palettes.flatMap(({ pigments }) => pigments)) {
    if (!isToxic(hazardOf(studio.stock, key))) continue;
    for (const { entry } of supply.draws) {
      const lot = entry?.lot ?? '';
      const words = lot === '' ? label : `${label}, lot ${lot.replace(/^lot\s*/i, '')}`;
      lots.set(`${key} ${lot}`, { pigment: key, lot, words });
    }
  }
  if (lots.size === 0) return null;
  const { people, acknowledged } = rules.value;
  return (
    <>
      <h2>{sayPalette.acknowledge}</h2>
      <p>{people.length === 0 ? sayPalette.nobody : sayPalette.acknowledgeLead}</p>
      <ul class="pal-sources">
        {[...lots.values()].flatMap(({ pigment, lot, words }) =>
          people.map((person) => {
            const read = acknowledged.find(
              (one) => one.pigment === pigment && one.lot === lot && one.person === person,
            );
            return (
              <li key={`${pigment} ${lot} ${person}`}>
                {read ? (
                  sayPalette.readOn(person, words, dayWords(read.date.slice(0, 10)))
                ) : (
                  <button
                    type="button"
                    onClick={() =>
                      void settle({
                        acknowledged: [...acknowledged, { pigment, lot, person, date: today() }],
                      })
                    }
                  >
                    {sayPalette.hasRead(person, words)}
                  </button>
                )}
              </li>
            );
          }),
        )}
      </ul>
    </>
  );
}
