import { useSignal } from '@preact/signals';
import { hrefOf } from '../route.ts';
import { ShelfLink } from '../shelf/ShelfLink.tsx';
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
      <ShelfLink />
    </section>
  );
}
