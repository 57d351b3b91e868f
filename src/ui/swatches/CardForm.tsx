import { useSignal } from '@preact/signals';
import type { Card, Paper } from '../../pigment/calibrate/card.ts';
import { labelOf } from '../../pigment/label.ts';
import { midSentence } from '../../wording.ts';
import { shownOf } from '../drawn/screen.ts';
import { Brushed } from '../shelf/Brushed.tsx';
import { lineOf } from '../shelf/order.ts';
import { ownStock } from '../shelf/state.ts';
import { saySwatches } from '../words/swatches.ts';
import {
  brushable,
  chosenPaints,
  keepCards,
  notYet,
  pages,
  pileWords,
  want,
  wanted,
} from './cards.ts';
import { DownloadLine } from './DownloadLine.tsx';
import { goTo } from './routes.ts';
import { Sheet } from './Sheet.tsx';

const TINTS = [1, 4, 16] as const;
const PAPERS: readonly (readonly [Paper, string])[] = [
  ['A4', 'A4'],
  ['letter', 'Letter'],
];

/** Choice of paints for a swatch card, with a preview of the printed card. */
export function CardForm() {
  const stock = ownStock.value;
  const white = stock.entries.find(({ id }) => id === stock.white)!;
  const { tints, paper, piles } = wanted.value;
  /** The cards saved last, so that printing twice saves them once and prints the saved ones. */
  const kept = useSignal<{
    readonly of: string;
    readonly cards: readonly Card[];
    readonly ids: readonly string[];
  } | null>(null);
  const of = JSON.stringify(pages.value.map(({ places, paper: on }) => [places, on]));
  const isKept = kept.value?.of === of;
  const cards = isKept ? kept.value!.cards : pages.value;
  const keep = async (): Promise<boolean> => {
    if (isKept) return true;
    const ids = await keepCards(cards, () => {
      kept.value = null;
    });
    if (ids === null) return false;
    kept.value = { of, cards, ids };
    return true;
  };
  return (
    <>
      <h1 tabIndex={-1} class="swatch-screen">
        {saySwatches.newCard}
      </h1>
      <form class="swatch-form swatch-screen" onSubmit={(event) => event.preventDefault()}>
        <fieldset>
          <legend>{saySwatches.whichPaints}</legend>
          <p class="small">{saySwatches.whichAbout(midSentence(labelOf(stock, white)))}</p>
          <p class="swatch-few">
            <button
              type="button"
              class="quiet"
              onClick={() => want({ paints: brushable.value.map(({ id }) => id) })}
            >
              {saySwatches.all}
            </button>
            <button type="button" class="quiet" onClick={() => want({ paints: [] })}>
              {saySwatches.none}
            </button>
            {notYet.value.length > 0 && (
              <button
                type="button"
                class="quiet"
                onClick={() => want({ paints: notYet.value.map(({ id }) => id) })}
              >
                {saySwatches.onlyNew}
              </button>
            )}
          </p>
          <ul class="swatch-paints">
            {brushable.value.map((entry) => (
              <li key={entry.id}>
                <PaintCheck id={entry.id} />
              </li>
            ))}
          </ul>
        </fieldset>
        <div class="swatch-choices">
          <fieldset>
            <legend>{saySwatches.tints}</legend>
            {TINTS.map((tint) => (
              <label key={tint} class="check swatch-check">
                <input
                  type="checkbox"
                  checked={tints.includes(tint)}
                  onChange={() =>
                    want({
                      tints: TINTS.filter((one) => tints.includes(one) !== (one === tint)),
                    })
                  }
                />
                {saySwatches.tintOf(tint)}
              </label>
            ))}
            <p class="small">
              {tints.length === 0 ? saySwatches.tintsMissing : saySwatches.tintsAbout}
            </p>
          </fieldset>
          <fieldset>
            <legend>{saySwatches.paper}</legend>
            <div class="choice">
              {PAPERS.map(([value, words]) => (
                <label key={value}>
                  <input
                    type="radio"
                    name="paper"
                    checked={paper === value}
                    onChange={() => want({ paper: value })}
                  />
                  <span>{words}</span>
                </label>
              ))}
            </div>
          </fieldset>
        </div>
        {piles.length > 0 && (
          <fieldset>
            <legend>{saySwatches.suggested}</legend>
            {piles.map((parts) => (
              <label key={pileWords(parts, stock)} class="check swatch-check">
                <input
                  type="checkbox"
                  checked
                  onChange={() => want({ piles: piles.filter((one) => one !== parts) })}
                />
                {pileWords(parts, stock)}
              </label>
            ))}
          </fieldset>
        )}
      </form>
      {cards.length === 0 ? (
        <p role="status" class="swatch-screen">
          {saySwatches.cardNothing}
        </p>
      ) : (
        <>
          <div class="swatch-actions swatch-screen">
            <DownloadLine cards={cards} main before={keep} />
            {isKept && cards.length === 1 && (
              <button type="button" class="quiet" onClick={() => goTo('read', kept.value!.ids[0]!)}>
                {saySwatches.readIt}
              </button>
            )}
            <p role="status" class="small">
              {saySwatches.pagesOf(cards.length)}
            </p>
          </div>
          <div class="swatch-sheets">
            {cards.map((card) => (
              <Sheet key={card.page} card={card} />
            ))}
          </div>
        </>
      )}
    </>
  );
}

function PaintCheck({ id }: { id: string }) {
  const stock = ownStock.value;
  const entry = stock.entries.find((each) => each.id === id)!;
  const { lab } = lineOf(stock, entry);
  const chosen = chosenPaints.value.map((each) => each.id);
  return (
    <label class="check swatch-check">
      <input
        type="checkbox"
        checked={chosen.includes(id)}
        onChange={() =>
          want({
            paints: chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id],
          })
        }
      />
      <span class="swatch-dab">
        <Brushed
          name={entry.pigment}
          width={64}
          height={26}
          strokes={lab ? [{ hex: shownOf(lab), words: '' }] : []}
        />
      </span>
      {labelOf(stock, entry)}
    </label>
  );
}
