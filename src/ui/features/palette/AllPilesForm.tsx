import { useId, useState } from 'preact/hooks';
import type { PileRecord } from '../../../book/schema/palette.ts';
import type { Entry } from '../../../book/schema/record.ts';
import { FILM_WORDS, type FilmWord } from '../../../palette/film-kinds.ts';
import { described, LabelledControl } from '../../components/LabelledControl.tsx';
import { omitPileFields } from '../../state/palette/palette-records.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { changePassage } from './passage-actions.ts';
import { parseNumberField, StoredSelect } from './StoredFields.tsx';

/** Form that sets area and film for all piles of a passage at once: a drapery has many folds. */
export function AllPilesForm({ passage }: { passage: Entry<'passage'> }) {
  const id = useId();
  const [typed, setTyped] = useState('');
  const [film, setFilm] = useState<FilmWord>('body colour');
  const [fault, setFault] = useState('');
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const cm2 = parseNumberField(typed);
    if (!(cm2 > 0 && Number.isFinite(cm2))) return setFault(paletteTexts.aNumber);
    setFault('');
    const set = (pile: PileRecord): PileRecord => ({
      ...omitPileFields(pile, 'share', 'filmMm', 'spareOil'),
      film,
      areaCm2: cm2 / passage.body.piles.length,
    });
    void changePassage(
      passage,
      ({ piles }) => ({ piles: piles.map(set) }),
      paletteTexts.allSet(passage.body.piles.length),
    );
  };
  return (
    <details>
      <summary>{paletteTexts.allPiles}</summary>
      <form class="pal-fields" onSubmit={submit} noValidate>
        <LabelledControl
          id={id}
          label={paletteTexts.allCm2}
          help={paletteTexts.allHelp}
          fault={fault}
        >
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={typed}
            aria-invalid={fault !== ''}
            aria-describedby={described(id, paletteTexts.allHelp, fault)}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </LabelledControl>
        <StoredSelect
          label={paletteTexts.allFilm}
          value={film}
          options={FILM_WORDS.map((word) => [word, word] as const)}
          onKeep={setFilm}
        />
        <p>
          <button type="submit">{paletteTexts.setAll}</button>
        </p>
      </form>
    </details>
  );
}
