import { shownOf } from '../drawn/screen.ts';
import { hrefOf } from '../route.ts';
import { say } from '../words/frame.ts';
import { sayPalette } from '../words/palette.ts';
import { kept } from './days.ts';
import type { Source } from './from.ts';
import { sourceOf } from './passages.ts';

/** All entries of the book that can supply piles. */
export function Sources({ onTake }: { onTake: (source: Source) => void }) {
  const cards = kept.value?.sources ?? [];
  if (cards.length === 0)
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
      {cards.map((card) => (
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
              <span class="small">{sayPalette.kinds[card.kind as Source['kind']]}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
