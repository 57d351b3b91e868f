import { useSignal, useSignalEffect } from '@preact/signals';
import type { PileRecord } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import { laidOf } from '../../mixture/laid.ts';
import { FILM_WORDS, FILMS } from '../../palette/film.ts';
import { labelIn } from '../../palette/passage.ts';
import { midSentence } from '../../wording.ts';
import { PaintedHeap } from '../drawn/PaintedHeap.tsx';
import { shownOf } from '../drawn/screen.ts';
import { seedOf } from '../drawn/seed.ts';
import { figure } from '../locale.ts';
import { book, edition } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { NumberField, Select, TextField } from './Fields.tsx';
import { filmOf, without } from './kept.ts';
import { changePassage, changePile } from './passages.ts';
import { studio } from './planning.ts';
import { rules } from './rules.ts';

/** One pile of a passage: its area or share, film, coats and allowances. */
export function PileForm({ passage, at }: { passage: Entry<'passage'>; at: number }) {
  const pile = passage.body.piles[at]!;
  const keep = (change: (pile: PileRecord) => PileRecord) => void changePile(passage, at, change);
  const film = filmOf(pile.film);
  const usual = FILMS[film];
  const { parts, lab } = laidOf(pile.mixture);
  const byShare = pile.share !== undefined;
  const put = (field: 'coats' | 'tooth' | 'waste' | 'spareOil' | 'filmMm', value: number) =>
    keep((one) => ({ ...one, [field]: value }));
  return (
    <article class="pal-pile" aria-label={pile.name}>
      <div class="pal-pile-head">
        <svg viewBox="-12 -12 24 24" width="56" height="56" aria-hidden="true">
          <PaintedHeap hex={shownOf(lab)} seed={seedOf(pile.name)} radius={10} />
        </svg>
        <p>
          {parts.map(({ pigment, parts: count, letDown }, i) => (
            <span key={pigment}>
              {i > 0 && ' + '}
              <b>{figure(count, 0, 2)}</b> {midSentence(labelIn(studio.value, pigment))}
              {letDown && sayPalette.letDown}
            </span>
          ))}
        </p>
      </div>
      {pile.from && <Lost of={pile.from} />}
      <div class="pal-fields">
        <TextField
          label={sayPalette.nameOf}
          value={pile.name}
          needed
          onKeep={(name) => keep((one) => ({ ...one, name }))}
        />
        <Select
          label={sayPalette.cover}
          value={byShare ? 'share' : 'cm2'}
          options={[
            ['cm2', sayPalette.coverCm2],
            ['share', sayPalette.coverShare],
          ]}
          onKeep={(way) =>
            keep((one) =>
              way === 'share'
                ? { ...without(one, 'areaCm2'), share: 0.1 }
                : { ...without(one, 'share'), areaCm2: 100 },
            )
          }
        />
        <NumberField
          key={byShare ? 'share' : 'cm2'}
          label={sayPalette.howMuchOf[byShare ? 'share' : 'cm2']}
          {...(byShare ? { most: 100 } : {})}
          value={byShare ? pile.share! * 100 : (pile.areaCm2 ?? 0)}
          onKeep={(value) =>
            keep((one) => (byShare ? { ...one, share: value / 100 } : { ...one, areaCm2: value }))
          }
        />
        <Select
          label={sayPalette.film}
          value={film}
          options={FILM_WORDS.map((word) => [word, word] as const)}
          onKeep={(word) =>
            keep((one) => ({
              ...without(one, 'filmMm', 'spareOil'),
              film: word,
            }))
          }
        />
        <NumberField
          key={`um ${film}`}
          label={sayPalette.filmUm}
          help={sayPalette.filmHelp(usual.least, usual.most)}
          value={pile.filmMm === undefined ? usual.usual : pile.filmMm * 1000}
          onKeep={(value) => put('filmMm', value / 1000)}
        />
        <NumberField
          label={sayPalette.coats}
          sort="whole"
          value={pile.coats ?? 1}
          onKeep={(value) => put('coats', value)}
        />
      </div>
      <details>
        <summary>{sayPalette.more}</summary>
        <div class="pal-fields">
          <NumberField
            label={sayPalette.tooth}
            sort="0 or more"
            most={500}
            value={(pile.tooth ?? rules.value.allowances.tooth) * 100}
            onKeep={(value) => put('tooth', value / 100)}
          />
          <NumberField
            label={sayPalette.waste}
            sort="0 or more"
            most={500}
            value={(pile.waste ?? rules.value.allowances.waste) * 100}
            onKeep={(value) => put('waste', value / 100)}
          />
          <NumberField
            key={`oil ${film}`}
            label={sayPalette.spareOil}
            sort="0 or more"
            most={500}
            value={(pile.spareOil ?? usual.spareOil) * 100}
            onKeep={(value) => put('spareOil', value / 100)}
          />
        </div>
      </details>
      <p>
        <button
          type="button"
          class="quiet"
          aria-label={`${sayPalette.removePile}: ${pile.name}`}
          onClick={() =>
            void changePassage(
              passage,
              ({ piles }) => ({ piles: piles.filter((_, i) => i !== at) }),
              sayPalette.pileRemoved(pile.name),
            )
          }
        >
          {sayPalette.removePile}
        </button>
      </p>
    </article>
  );
}

/** Note that the pile's source is no longer in the book. */
function Lost({ of }: { of: string }) {
  const isLost = useSignal(false);
  useSignalEffect(() => {
    edition.value;
    void (async () => {
      const from = book.value;
      if (!from) return;
      for (const kind of ['harmony', 'drapery', 'formula'] as const) {
        const found = await from.get(kind, of);
        if (found.ok && found.value.deletedAt === undefined) {
          isLost.value = false;
          return;
        }
      }
      isLost.value = true;
    })();
  });
  return isLost.value ? <p class="small">{sayPalette.sourceLost}</p> : null;
}
