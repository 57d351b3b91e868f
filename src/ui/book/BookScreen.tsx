import { useSignal } from '@preact/signals';
import { hexOf } from '../../colour/hex.ts';
import { masstone } from '../../pigment/white.ts';
import { hrefOf } from '../route.ts';
import { shelf } from '../studio.ts';
import { say } from '../words.ts';
import { Cards } from './Cards.tsx';

export function BookScreen() {
  const having = useSignal('');
  return (
    <section class="page">
      <h1 tabIndex={-1}>Book</h1>
      <label class="search">
        {say.search}
        <input
          type="search"
          value={having}
          onInput={(event) => {
            having.value = event.currentTarget.value;
          }}
        />
      </label>
      <h2>{say.harmonies}</h2>
      <Cards
        kind="harmony"
        having={having.value}
        empty={
          <p>
            {say.bookEmpty} <a href={hrefOf('walk')}>{say.toWalk}</a>
          </p>
        }
      />
      <h2>{say.specimensHeading}</h2>
      <Cards kind="specimen" having={having.value} empty={<p>{say.noSpecimens}</p>} />
      <h2>{say.shelf}</h2>
      <p>{say.shelfAbout}</p>
      <ul class="shelf">
        {shelf.value.paints.map(({ pigment, label, paint }) => {
          const hex = hexOf(masstone(paint, shelf.value.surface));
          return (
            <li key={pigment}>
              <svg viewBox="0 0 44 44" width="44" height="44" aria-hidden="true">
                <circle cx="22" cy="22" r="20" fill={hex} />
              </svg>
              {label}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
