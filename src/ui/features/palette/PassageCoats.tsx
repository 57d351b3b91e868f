import type { Entry } from '../../../book/schema/record.ts';
import { drynessWords } from '../../../messages/palette-messages.ts';
import { drynessOf } from '../../../palette/drying-time.ts';
import type { DryState } from '../../../palette/passage.ts';
import { dateWords } from '../../state/locale-format.ts';
import { plannedDate } from '../../state/palette/day-entries.ts';
import { passageFromEntry } from '../../state/palette/palette-records.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { changePassage } from './passage-actions.ts';
import { StoredSelect } from './StoredFields.tsx';

const STATES: readonly DryState[] = ['wet', 'tacky', 'touch-dry'];

/** The coats of a passage, and how dry each feels today. */
export function PassageCoats({ passage }: { passage: Entry<'passage'> }) {
  const { coats } = passage.body;
  if (coats.length === 0) return <p>{paletteTexts.noCoats}</p>;
  const { layers } = passageFromEntry(passage);
  return (
    <ol class="pal-coats">
      {layers.map((layer, at) => {
        const felt = layer.felt?.date === plannedDate.value ? layer.felt.state : '';
        return (
          <li key={at}>
            <p>
              {dateWords(layer.date)}, {layer.film}:{' '}
              {layer.date <= plannedDate.value && drynessWords(drynessOf(layer, plannedDate.value))}
            </p>
            <StoredSelect
              label={paletteTexts.touch}
              value={felt}
              options={[
                ['', paletteTexts.notTouched] as const,
                ...STATES.map((state) => [state, paletteTexts.touched[state]] as const),
              ]}
              onKeep={(state) => {
                const { felt: _, ...coat } = coats[at]!;
                const touched =
                  state === '' ? coat : { ...coat, felt: { date: plannedDate.value, state } };
                void changePassage(passage, { coats: coats.with(at, touched) });
              }}
            />
            <button
              type="button"
              class="quiet"
              onClick={() =>
                void changePassage(
                  passage,
                  { coats: coats.filter((_, i) => i !== at) },
                  paletteTexts.coatRemoved,
                )
              }
            >
              {paletteTexts.removeCoat}
            </button>
          </li>
        );
      })}
    </ol>
  );
}
