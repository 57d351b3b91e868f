import { useState } from 'preact/hooks';
import { MOST_PALETTES } from '../../palette/faults.ts';
import { sayPalette } from '../words/palette.ts';
import { kept, palettes } from './days.ts';
import { Select } from './Fields.tsx';
import { newPassage, putOn } from './passages.ts';
import { Sources } from './Sources.tsx';

/** Sources of a new passage: the book, an earlier passage, or none. */
export function Begin() {
  const there = new Set(palettes.value.flatMap(({ body }) => body.passages));
  const older = (kept.value?.passages ?? []).filter(({ id }) => !there.has(id));
  const isFull = palettes.value.length >= MOST_PALETTES;
  const [chosen, setChosen] = useState('');
  const on =
    palettes.value.find(({ id }) => id === chosen) ?? (isFull ? (palettes.value[0] ?? null) : null);
  return (
    <div class="pal-begin">
      {palettes.value.length > 0 && (
        <Select
          label={sayPalette.layOn}
          value={on?.id ?? ''}
          options={[
            ...(isFull ? [] : [['', sayPalette.ownPalette] as const]),
            ...palettes.value.map(({ id, body }) => [id, body.name] as const),
          ]}
          onKeep={setChosen}
        />
      )}
      <h2>{sayPalette.fromBook}</h2>
      <Sources onTake={(source) => void newPassage(source, on)} />
      {older.length > 0 && (
        <>
          <h2>{sayPalette.goOn}</h2>
          <ul class="pal-sources">
            {older.slice(0, 12).map(({ id, body }) => (
              <li key={id}>
                <button type="button" onClick={() => void putOn(id, on)}>
                  {body.name}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        <button type="button" onClick={() => void newPassage(null, on)}>
          {sayPalette.byHand}
        </button>
      </p>
    </div>
  );
}
