import { useId, useState } from 'preact/hooks';
import type { PileRecord } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import { FILM_WORDS, type FilmWord } from '../../palette/film.ts';
import { described, Labelled } from '../Labelled.tsx';
import { sayPalette } from '../words/palette.ts';
import { numberIn, Select } from './Fields.tsx';
import { without } from './kept.ts';
import { changePassage } from './passages.ts';

/** Form that sets area and film for all piles of a passage at once: a drapery has many folds. */
export function AllPiles({ passage }: { passage: Entry<'passage'> }) {
  const id = useId();
  const [typed, setTyped] = useState('');
  const [film, setFilm] = useState<FilmWord>('body colour');
  const [fault, setFault] = useState('');
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const cm2 = numberIn(typed);
    if (!(cm2 > 0 && Number.isFinite(cm2))) return setFault(sayPalette.aNumber);
    setFault('');
    const set = (pile: PileRecord): PileRecord => ({
      ...without(pile, 'share', 'filmMm', 'spareOil'),
      film,
      areaCm2: cm2 / passage.body.piles.length,
    });
    void changePassage(
      passage,
      ({ piles }) => ({ piles: piles.map(set) }),
      sayPalette.allSet(passage.body.piles.length),
    );
  };
  return (
    <details>
      <summary>{sayPalette.allPiles}</summary>
      <form class="pal-fields" onSubmit={submit} noValidate>
        <Labelled id={id} label={sayPalette.allCm2} help={sayPalette.allHelp} fault={fault}>
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={typed}
            aria-invalid={fault !== ''}
            aria-describedby={described(id, sayPalette.allHelp, fault)}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </Labelled>
        <Select
          label={sayPalette.allFilm}
          value={film}
          options={FILM_WORDS.map((word) => [word, word] as const)}
          onKeep={setFilm}
        />
        <p>
          <button type="submit">{sayPalette.setAll}</button>
        </p>
      </form>
    </details>
  );
}
