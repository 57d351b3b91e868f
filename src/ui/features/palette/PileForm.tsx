import { useSignal, useSignalEffect } from '@preact/signals';
import type { PileRecord } from '../../../book/schema/palette.ts';
import type { Entry } from '../../../book/schema/record.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { pilePartsOf } from '../../../mixture/pile-parts.ts';
import { FILM_WORDS, FILMS } from '../../../palette/film-kinds.ts';
import { labelIn } from '../../../palette/passage.ts';
import { midSentence } from '../../../wording.ts';
import { PaintedHeap } from '../../components/drawn/PaintedHeap.tsx';
import { formatNumber } from '../../state/locale-format.ts';
import { filmOf, omitPileFields } from '../../state/palette/palette-records.ts';
import { planningStudio } from '../../state/palette/plan-job.ts';
import { studioRules } from '../../state/palette/studio-rules.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { book, bookRevision } from '../../state/studio.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { changePassage, editPile } from './passage-actions.ts';
import { NumberField, StoredSelect, TextField } from './StoredFields.tsx';

/** One pile of a passage: its area or share, film, coats and allowances. */
export function PileForm({ passage, at }: { passage: Entry<'passage'>; at: number }) {
  const pile = passage.body.piles[at]!;
  const keep = (change: (pile: PileRecord) => PileRecord) => void editPile(passage, at, change);
  const film = filmOf(pile.film);
  const usual = FILMS[film];
  const { parts, lab } = pilePartsOf(pile.mixture);
  const byShare = pile.share !== undefined;
  const put = (field: 'coats' | 'tooth' | 'waste' | 'spareOil' | 'filmMm', value: number) =>
    keep((one) => ({ ...one, [field]: value }));
  return (
    <article class="pal-pile" aria-label={pile.name}>
      <div class="pal-pile-head">
        <svg viewBox="-12 -12 24 24" width="56" height="56" aria-hidden="true">
          <PaintedHeap hex={cssColourOf(lab)} seed={seedOf(pile.name)} radius={10} />
        </svg>
        <p>
          {parts.map(({ pigment, parts: count, letDown }, i) => (
            <span key={pigment}>
              {i > 0 && ' + '}
              <b>{formatNumber(count, 0, 2)}</b>{' '}
              {midSentence(labelIn(planningStudio.value, pigment))}
              {letDown && paletteTexts.letDown}
            </span>
          ))}
        </p>
      </div>
      {pile.from && <Lost of={pile.from} />}
      <div class="pal-fields">
        <TextField
          label={paletteTexts.nameOf}
          value={pile.name}
          needed
          onKeep={(name) => keep((one) => ({ ...one, name }))}
        />
        <StoredSelect
          label={paletteTexts.cover}
          value={byShare ? 'share' : 'cm2'}
          options={[
            ['cm2', paletteTexts.coverCm2],
            ['share', paletteTexts.coverShare],
          ]}
          onKeep={(way) =>
            keep((one) =>
              way === 'share'
                ? { ...omitPileFields(one, 'areaCm2'), share: 0.1 }
                : { ...omitPileFields(one, 'share'), areaCm2: 100 },
            )
          }
        />
        <NumberField
          key={byShare ? 'share' : 'cm2'}
          label={paletteTexts.howMuchOf[byShare ? 'share' : 'cm2']}
          {...(byShare ? { most: 100 } : {})}
          value={byShare ? pile.share! * 100 : (pile.areaCm2 ?? 0)}
          onKeep={(value) =>
            keep((one) => (byShare ? { ...one, share: value / 100 } : { ...one, areaCm2: value }))
          }
        />
        <StoredSelect
          label={paletteTexts.film}
          value={film}
          options={FILM_WORDS.map((word) => [word, word] as const)}
          onKeep={(word) =>
            keep((one) => ({
              ...omitPileFields(one, 'filmMm', 'spareOil'),
              film: word,
            }))
          }
        />
        <NumberField
          key={`um ${film}`}
          label={paletteTexts.filmUm}
          help={paletteTexts.filmHelp(usual.least, usual.most)}
          value={pile.filmMm === undefined ? usual.usual : pile.filmMm * 1000}
          onKeep={(value) => put('filmMm', value / 1000)}
        />
        <NumberField
          label={paletteTexts.coats}
          sort="whole"
          value={pile.coats ?? 1}
          onKeep={(value) => put('coats', value)}
        />
      </div>
      <details>
        <summary>{paletteTexts.more}</summary>
        <div class="pal-fields">
          <NumberField
            label={paletteTexts.tooth}
            sort="0 or more"
            most={500}
            value={(pile.tooth ?? studioRules.value.allowances.tooth) * 100}
            onKeep={(value) => put('tooth', value / 100)}
          />
          <NumberField
            label={paletteTexts.waste}
            sort="0 or more"
            most={500}
            value={(pile.waste ?? studioRules.value.allowances.waste) * 100}
            onKeep={(value) => put('waste', value / 100)}
          />
          <NumberField
            key={`oil ${film}`}
            label={paletteTexts.spareOil}
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
          aria-label={`${paletteTexts.removePile}: ${pile.name}`}
          onClick={() =>
            void changePassage(
              passage,
              ({ piles }) => ({ piles: piles.filter((_, i) => i !== at) }),
              paletteTexts.pileRemoved(pile.name),
            )
          }
        >
          {paletteTexts.removePile}
        </button>
      </p>
    </article>
  );
}

/** Note that the pile's source is no longer in the book. */
function Lost({ of }: { of: string }) {
  const isLost = useSignal(false);
  useSignalEffect(() => {
    bookRevision.value;
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
  return isLost.value ? <p class="small">{paletteTexts.sourceLost}</p> : null;
}
