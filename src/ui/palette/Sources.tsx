import { useSignal, useSignalEffect } from '@preact/signals';
import type { Card } from '../../book/card.ts';
import { shownOf } from '../drawn/screen.ts';
import { hrefOf } from '../route.ts';
import { book, edition } from '../studio.ts';
import { say } from '../words/frame.ts';
import { sayPalette } from '../words/palette.ts';
import type { Source } from './from.ts';
import { sourceOf } from './passages.ts';

const KINDS = ['harmony', 'drapery', 'formula'] as const;

/** Everything in the book that piles can be taken from. */
export function Sources({ onTake }: { onTake: (source: Source) => void }) {
  const cards = useSignal<readonly Card[] | null>(null);
  useSignalEffect(() => {
    edition.value;
    const from = book.value;
    if (!from) return;
    void Promise.all(KINDS.map((kind) => from.list(kind))).then((lists) => {
      cards.value = lists.flatMap((list) => (list.ok ? list.value : []));
    });
  });
  if (cards.value === null) return <p role="status">{say.bookOpening}</p>;
  if (cards.value.length === 0)
    return (
      <>
        <p>{sayPalette.fromBookEmpty}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('walk')}>
            {say.toWalk}
          </a>
        </p>
      </>
    );
  const take = async (id: string) => {
    const source = await sourceOf(id);
    if (source) onTake(source);
  };
  return (
    <ul class="pal-sources">
      {cards.value.map((card) => (
        <li key={card.id}>
          <button type="button" onClick={() => void take(card.id)}>
            <svg viewBox="0 0 56 20" width="56" height="20" aria-hidden="true">
              {card.colours.slice(0, 4).map(({ lab }, i) => (
                <ellipse
                  key={`${i}${lab}`}
                  cx={8 + 13 * i}
                  cy="10"
                  rx="6.5"
                  ry="6"
                  fill={shownOf(lab)}
                />
              ))}
            </svg>
            <span>
              {card.name || say.unnamed}{' '}
              <span class="small">{sayPalette.kinds[card.kind as (typeof KINDS)[number]]}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
