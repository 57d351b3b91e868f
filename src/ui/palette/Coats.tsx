import type { Entry } from '../../book/record.ts';
import { drynessOf } from '../../palette/drying.ts';
import type { DryState } from '../../palette/passage.ts';
import { drynessWords } from '../../palette/said.ts';
import { dateWords, said } from '../locale.ts';
import { sayPalette } from '../words/palette.ts';
import { date } from './days.ts';
import { Select } from './Fields.tsx';
import { passageOf } from './kept.ts';
import { changePassage } from './passages.ts';

const STATES: readonly DryState[] = ['wet', 'tacky', 'touch-dry'];

/** The coats of a passage, and how dry each feels today. */
export function Coats({ passage }: { passage: Entry<'passage'> }) {
  const { coats } = passage.body;
  if (coats.length === 0) return <p>{sayPalette.noCoats}</p>;
  const { layers } = passageOf(passage);
  return (
    <ol class="pal-coats">
      {layers.map((layer, at) => {
        const felt = layer.felt?.date === date.value ? layer.felt.state : '';
        return (
          <li key={at}>
            <p>
              {dateWords(layer.date)}, {layer.film}:{' '}
              {layer.date <= date.value && said(drynessWords(drynessOf(layer, date.value)))}
            </p>
            <Select
              label={sayPalette.touch}
              value={felt}
              options={[
                ['', sayPalette.notTouched] as const,
                ...STATES.map((state) => [state, sayPalette.touched[state]] as const),
              ]}
              onKeep={(state) => {
                const { felt: _, ...coat } = coats[at]!;
                const touched =
                  state === '' ? coat : { ...coat, felt: { date: date.value, state } };
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
                  sayPalette.coatRemoved,
                )
              }
            >
              {sayPalette.removeCoat}
            </button>
          </li>
        );
      })}
    </ol>
  );
}
