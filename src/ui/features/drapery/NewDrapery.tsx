import { useEffect } from 'preact/hooks';
import { SHIPPED_FORMULAS } from '../../../drapery/shipped-formulas.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { sourceFromHarmony } from '../../state/drapery/colour-sources.ts';
import { schemeFromColours } from '../../state/drapery/drapery-scheme.ts';
import { openHarmony } from '../../state/drapery/open-harmony.ts';
import { replaceDrapery } from '../../state/drapery/saved-drapery.ts';
import { dateWords } from '../../state/locale-format.ts';
import { go, hrefOf } from '../../state/route.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { book, showError } from '../../state/studio.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { sharedTexts as sayAll } from '../../texts/shared-texts.ts';
import { entrySummaries, loadEntries } from '../book/entry-list.ts';
import { ColourStrokes } from './ColourStrokes.tsx';
import { FormulaDraperyButton } from './FormulaDraperyButton.tsx';

const MOST = 12;

/** Empty state: sources of a new drapery, and the saved draperies and formulas. */
export function NewDrapery() {
  useEffect(loadEntries, []);
  const open = openHarmony.value;
  const all = entrySummaries.value ?? [];
  const harmonies = all.filter(({ kind }) => kind === 'harmony').slice(0, MOST);
  const made = all
    .filter(({ kind }) => kind === 'drapery' || kind === 'formula')
    .slice(0, 2 * MOST);
  return (
    <section class="page drapery-begin">
      <h1 tabIndex={-1}>{draperyTexts.heading}</h1>
      <p class="lead">{draperyTexts.lead}</p>
      {open && (
        <p class="main-actions">
          <button
            type="button"
            class="main"
            onClick={() => replaceDrapery(schemeFromColours(open.name, open.harmony, open.colours))}
          >
            {draperyTexts.fromOpen(open.name)}
          </button>
        </p>
      )}
      {made.length > 0 && (
        <>
          <h2>{draperyTexts.keptDraperies}</h2>
          <ul class="drapery-list">
            {made.map(({ id, kind, name, colours, date }) => (
              <li key={id}>
                <a
                  class="drapery-take"
                  href={kind === 'drapery' ? hrefOf('drapery', id) : hrefOf('book', id)}
                >
                  <ColourStrokes hexes={colours.slice(0, 6).map(({ lab }) => cssColourOf(lab))} />
                  <span>{name}</span>
                  <span class="small">
                    {kind === 'drapery' ? draperyTexts.draperyIn : draperyTexts.formulaIn},{' '}
                    {dateWords(date)}
                  </span>
                </a>
                {kind === 'formula' && <FormulaDraperyButton id={id} name={name} />}
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>{draperyTexts.fromWorked}</h2>
      <p>{draperyTexts.workedAbout}</p>
      <ul class="drapery-list">
        {SHIPPED_FORMULAS.map(({ name, note, wish }) => (
          <li key={name}>
            <button
              type="button"
              class="drapery-take"
              onClick={() =>
                replaceDrapery({
                  name,
                  harmony: null,
                  garments: [{ wish: { ...wish, name }, share: 1 }],
                })
              }
            >
              <ColourStrokes
                hexes={[wish.lab, ...(wish.shadows ? [wish.shadows] : [])].map(cssColourOf)}
              />
              <span>{name}</span>
              <span class="small">{note}</span>
            </button>
          </li>
        ))}
      </ul>
      <h2>{draperyTexts.fromHarmonies}</h2>
      {harmonies.length === 0 ? (
        <p>
          {draperyTexts.noHarmonies} <a href={hrefOf('walk')}>{sayAll.toWalk}</a>
        </p>
      ) : (
        <ul class="drapery-list">
          {harmonies.map(({ id, name, colours, date }) => (
            <li key={id}>
              <button type="button" class="drapery-take" onClick={() => void take(id)}>
                <ColourStrokes hexes={colours.map(({ lab }) => cssColourOf(lab))} />
                <span>{name}</span>
                <span class="small">{dateWords(date)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

async function take(id: string): Promise<void> {
  const found = await book.value?.get('harmony', id);
  if (!found) return;
  if (!found.ok) return showError(bookFaultWords(found.fault));
  const { name, colours, harmony } = sourceFromHarmony(id, found.value.body);
  replaceDrapery(schemeFromColours(name, harmony, colours));
  go('drapery');
}
