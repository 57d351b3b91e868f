import { type LotToRead, lotsToRead, readingOf } from '../../palette/acknowledge.ts';
import { dayWords } from '../../palette/calendar.ts';
import type { Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { today } from '../locale.ts';
import { tell } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { rules, settle } from './rules.ts';

/** Who has read the data sheet of each toxic lot: one acknowledgement for each person and lot. */
export function Acknowledge({ day, studio }: { day: Day; studio: Studio }) {
  const lots = new Map(
    lotsToRead(
      day.palettes.flatMap(({ pigments }) => pigments),
      studio.stock,
    ).map((lot) => [lot.words, lot]),
  );
  if (lots.size === 0) return null;
  const { people, acknowledged } = rules.value;
  const read = async (person: string, { pigment, lot, words }: LotToRead) => {
    const put = await settle({
      acknowledged: [...acknowledged, { pigment, lot, person, date: today() }],
    });
    if (put) tell(sayPalette.hasRead(person, words), put.undo);
  };
  return (
    <>
      <h2>{sayPalette.acknowledge}</h2>
      <p>{people.length === 0 ? sayPalette.nobody : sayPalette.acknowledgeLead}</p>
      <ul class="pal-sources">
        {[...lots.values()].flatMap((lot) =>
          people.map((person) => {
            const found = readingOf(rules.value, lot, person);
            return (
              <li key={`${lot.words} ${person}`}>
                {found ? (
                  sayPalette.readOn(person, lot.words, dayWords(found.date.slice(0, 10)))
                ) : (
                  <button type="button" onClick={() => void read(person, lot)}>
                    {sayPalette.hasRead(person, lot.words)}
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
