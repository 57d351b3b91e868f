import { useState } from 'preact/hooks';
import { MOST_PALETTES } from '../../../palette/palette-faults.ts';
import { dayEntries, dayPalettes } from '../../state/palette/day-entries.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { PassageSourceList } from './PassageSourceList.tsx';
import { addToPalette, createPassage } from './passage-actions.ts';
import { StoredSelect } from './StoredFields.tsx';

/** Sources of a new passage: the book, an earlier passage, or none. */
export function NewPassage() {
  const there = new Set(dayPalettes.value.flatMap(({ body }) => body.passages));
  const older = (dayEntries.value?.passages ?? []).filter(({ id }) => !there.has(id));
  const isFull = dayPalettes.value.length >= MOST_PALETTES;
  const [chosen, setChosen] = useState('');
  const on =
    dayPalettes.value.find(({ id }) => id === chosen) ??
    (isFull ? (dayPalettes.value[0] ?? null) : null);
  return (
    <div class="pal-begin">
      {dayPalettes.value.length > 0 && (
        <StoredSelect
          label={paletteTexts.layOn}
          value={on?.id ?? ''}
          options={[
            ...(isFull ? [] : [['', paletteTexts.ownPalette] as const]),
            ...dayPalettes.value.map(({ id, body }) => [id, body.name] as const),
          ]}
          onKeep={setChosen}
        />
      )}
      <h2>{paletteTexts.fromBook}</h2>
      <PassageSourceList onTake={(source) => void createPassage(source, on)} />
      {older.length > 0 && (
        <>
          <h2>{paletteTexts.goOn}</h2>
          <ul class="pal-sources">
            {older.slice(0, 12).map(({ id, body }) => (
              <li key={id}>
                <button type="button" onClick={() => void addToPalette(id, on)}>
                  {body.name}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        <button type="button" onClick={() => void createPassage(null, on)}>
          {paletteTexts.byHand}
        </button>
      </p>
    </div>
  );
}
