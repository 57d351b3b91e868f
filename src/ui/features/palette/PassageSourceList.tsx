import { dayEntries } from '../../state/palette/day-entries.ts';
import { hrefOf } from '../../state/route.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { readPassageSource } from './passage-actions.ts';
import type { PassageSource } from './passage-sources.ts';

/** All entries of the book that can supply piles. */
export function PassageSourceList({ onTake }: { onTake: (source: PassageSource) => void }) {
  const cards = dayEntries.value?.sources ?? [];
  if (cards.length === 0)
    return (
      <>
        <p>{paletteTexts.fromBookEmpty}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('walk')}>
            {sharedTexts.toWalk}
          </a>
        </p>
      </>
    );
  const take = async (id: string) => {
    const source = await readPassageSource(id);
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
                  fill={cssColourOf(lab)}
                />
              ))}
            </svg>
            <span>
              {card.name || sharedTexts.unnamed}{' '}
              <span class="small">{paletteTexts.kinds[card.kind as PassageSource['kind']]}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
