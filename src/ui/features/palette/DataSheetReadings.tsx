import { type LotToRead, lotsToRead, readingOf } from '../../../palette/acknowledgements.ts';
import type { Day } from '../../../palette/day-plan.ts';
import { dayWords } from '../../../palette/iso-date.ts';
import type { Studio } from '../../../palette/passage.ts';
import { today } from '../../state/locale-format.ts';
import { studioRules, updateStudioRules } from '../../state/palette/studio-rules.ts';
import { showNotice } from '../../state/studio.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

/** Who has read the data sheet of each toxic lot: one acknowledgement for each person and lot. */
export function DataSheetReadings({ day, studio }: { day: Day; studio: Studio }) {
  const lots = new Map(
    lotsToRead(
      day.palettes.flatMap(({ pigments }) => pigments),
      studio.stock,
    ).map((lot) => [lot.words, lot]),
  );
  if (lots.size === 0) return null;
  const { people, acknowledged } = studioRules.value;
  const read = async (person: string, { pigment, lot, words }: LotToRead) => {
    const put = await updateStudioRules({
      acknowledged: [...acknowledged, { pigment, lot, person, date: today() }],
    });
    if (put) showNotice(paletteTexts.hasRead(person, words), put.undo);
  };
  return (
    <>
      <h2>{paletteTexts.acknowledge}</h2>
      <p>{people.length === 0 ? paletteTexts.nobody : paletteTexts.acknowledgeLead}</p>
      <ul class="pal-sources">
        {[...lots.values()].flatMap((lot) =>
          people.map((person) => {
            const found = readingOf(studioRules.value, lot, person);
            return (
              <li key={`${lot.words} ${person}`}>
                {found ? (
                  paletteTexts.readOn(person, lot.words, dayWords(found.date.slice(0, 10)))
                ) : (
                  <button type="button" onClick={() => void read(person, lot)}>
                    {paletteTexts.hasRead(person, lot.words)}
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
