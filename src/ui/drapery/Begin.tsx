import { useEffect } from 'preact/hooks';
import { bookFaultWords } from '../../book/faults.ts';
import { WORKED } from '../../drapery/worked.ts';
import { cards, wantCards } from '../book/state.ts';
import { shownOf } from '../drawn/screen.ts';
import { dateWords } from '../locale.ts';
import { go, hrefOf } from '../route.ts';
import { book, complain } from '../studio.ts';
import { say } from '../words/drapery.ts';
import { say as sayAll } from '../words/frame.ts';
import { openHarmony } from './colours.ts';
import { Dab } from './Dab.tsx';
import { FromFormula } from './FromFormula.tsx';
import { keptHarmony } from './kept.ts';
import { begin } from './saved.ts';
import { schemeOf } from './state.ts';

const MOST = 12;

/** Empty state: sources of a new drapery, and the saved draperies and formulas. */
export function Begin() {
  useEffect(wantCards, []);
  const open = openHarmony.value;
  const all = cards.value ?? [];
  const harmonies = all.filter(({ kind }) => kind === 'harmony').slice(0, MOST);
  const made = all
    .filter(({ kind }) => kind === 'drapery' || kind === 'formula')
    .slice(0, 2 * MOST);
  return (
    <section class="page drapery-begin">
      <h1 tabIndex={-1}>{say.heading}</h1>
      <p class="lead">{say.lead}</p>
      {open && (
        <p class="main-actions">
          <button
            type="button"
            class="main"
            onClick={() => begin(schemeOf(open.name, open.harmony, open.colours))}
          >
            {say.fromOpen(open.name)}
          </button>
        </p>
      )}
      {made.length > 0 && (
        <>
          <h2>{say.keptDraperies}</h2>
          <ul class="drapery-list">
            {made.map(({ id, kind, name, colours, date }) => (
              <li key={id}>
                <a
                  class="drapery-take"
                  href={kind === 'drapery' ? hrefOf('drapery', id) : hrefOf('book', id)}
                >
                  <Dab hexes={colours.slice(0, 6).map(({ lab }) => shownOf(lab))} />
                  <span>{name}</span>
                  <span class="small">
                    {kind === 'drapery' ? say.draperyIn : say.formulaIn}, {dateWords(date)}
                  </span>
                </a>
                {kind === 'formula' && <FromFormula id={id} name={name} />}
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>{say.fromWorked}</h2>
      <p>{say.workedAbout}</p>
      <ul class="drapery-list">
        {WORKED.map(({ name, note, wish }) => (
          <li key={name}>
            <button
              type="button"
              class="drapery-take"
              onClick={() =>
                begin({ name, harmony: null, garments: [{ wish: { ...wish, name }, share: 1 }] })
              }
            >
              <Dab hexes={[wish.lab, ...(wish.shadows ? [wish.shadows] : [])].map(shownOf)} />
              <span>{name}</span>
              <span class="small">{note}</span>
            </button>
          </li>
        ))}
      </ul>
      <h2>{say.fromHarmonies}</h2>
      {harmonies.length === 0 ? (
        <p>
          {say.noHarmonies} <a href={hrefOf('walk')}>{sayAll.toWalk}</a>
        </p>
      ) : (
        <ul class="drapery-list">
          {harmonies.map(({ id, name, colours, date }) => (
            <li key={id}>
              <button type="button" class="drapery-take" onClick={() => void take(id)}>
                <Dab hexes={colours.map(({ lab }) => shownOf(lab))} />
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
  if (!found.ok) return complain(bookFaultWords(found.fault));
  const { name, colours, harmony } = keptHarmony(id, found.value.body);
  begin(schemeOf(name, harmony, colours));
  go('drapery');
}
