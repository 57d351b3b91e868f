import { useSignal } from '@preact/signals';
import type { Paper, SwatchCard } from '../../../calibration/swatch-card.ts';
import { labelOf } from '../../../pigment/stock-label.ts';
import { midSentence } from '../../../wording.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { cssColourOf } from '../../state/screen-colour.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { lineOf } from '../shelf/shelf-search.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { CardExport } from './CardExport.tsx';
import { CardPage } from './CardPage.tsx';
import { goTo } from './calibration-routes.ts';
import {
  brushable,
  cardOptions,
  chosenPaints,
  compositionWords,
  keepCards,
  notYet,
  pages,
  setCardOptions,
} from './swatch-cards.ts';

const TINTS = [1, 4, 16] as const;
const PAPERS: readonly (readonly [Paper, string])[] = [
  ['A4', 'A4'],
  ['letter', 'Letter'],
];

/** Choice of paints for a swatch card, with a preview of the printed card. */
export function CardForm() {
  const stock = ownStock.value;
  const white = stock.entries.find(({ id }) => id === stock.white)!;
  const { tints, paper, piles } = cardOptions.value;
  /** The cards saved last, so that printing twice saves them once and prints the saved ones. */
  const kept = useSignal<{
    readonly of: string;
    readonly cards: readonly SwatchCard[];
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
        {calibrationTexts.newCard}
      </h1>
      <form class="swatch-form swatch-screen" onSubmit={(event) => event.preventDefault()}>
        <fieldset>
          <legend>{calibrationTexts.whichPaints}</legend>
          <p class="small">{calibrationTexts.whichAbout(midSentence(labelOf(stock, white)))}</p>
          <p class="swatch-few">
            <button
              type="button"
              class="quiet"
              onClick={() => setCardOptions({ paints: brushable.value.map(({ id }) => id) })}
            >
              {calibrationTexts.all}
            </button>
            <button type="button" class="quiet" onClick={() => setCardOptions({ paints: [] })}>
              {calibrationTexts.none}
            </button>
            {notYet.value.length > 0 && (
              <button
                type="button"
                class="quiet"
                onClick={() => setCardOptions({ paints: notYet.value.map(({ id }) => id) })}
              >
                {calibrationTexts.onlyNew}
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
            <legend>{calibrationTexts.tints}</legend>
            {TINTS.map((tint) => (
              <label key={tint} class="check swatch-check">
                <input
                  type="checkbox"
                  checked={tints.includes(tint)}
                  onChange={() =>
                    setCardOptions({
                      tints: TINTS.filter((one) => tints.includes(one) !== (one === tint)),
                    })
                  }
                />
                {calibrationTexts.tintOf(tint)}
              </label>
            ))}
            <p class="small">
              {tints.length === 0 ? calibrationTexts.tintsMissing : calibrationTexts.tintsAbout}
            </p>
          </fieldset>
          <fieldset>
            <legend>{calibrationTexts.paper}</legend>
            <div class="choice">
              {PAPERS.map(([value, words]) => (
                <label key={value}>
                  <input
                    type="radio"
                    name="paper"
                    checked={paper === value}
                    onChange={() => setCardOptions({ paper: value })}
                  />
                  <span>{words}</span>
                </label>
              ))}
            </div>
          </fieldset>
        </div>
        {piles.length > 0 && (
          <fieldset>
            <legend>{calibrationTexts.suggested}</legend>
            {piles.map((parts) => (
              <label key={compositionWords(parts, stock)} class="check swatch-check">
                <input
                  type="checkbox"
                  checked
                  onChange={() => setCardOptions({ piles: piles.filter((one) => one !== parts) })}
                />
                {compositionWords(parts, stock)}
              </label>
            ))}
          </fieldset>
        )}
      </form>
      {cards.length === 0 ? (
        <p role="status" class="swatch-screen">
          {calibrationTexts.cardNothing}
        </p>
      ) : (
        <>
          <div class="swatch-actions swatch-screen">
            <CardExport cards={cards} main before={keep} />
            {isKept && cards.length === 1 && (
              <button type="button" class="quiet" onClick={() => goTo('read', kept.value!.ids[0]!)}>
                {calibrationTexts.readIt}
              </button>
            )}
            <p role="status" class="small">
              {calibrationTexts.pagesOf(cards.length)}
            </p>
          </div>
          <div class="swatch-sheets">
            {cards.map((card) => (
              <CardPage key={card.page} card={card} />
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
          setCardOptions({
            paints: chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id],
          })
        }
      />
      <span class="swatch-dab">
        <BrushedPaint
          name={entry.pigment}
          width={64}
          height={26}
          strokes={lab ? [{ hex: cssColourOf(lab), words: '' }] : []}
        />
      </span>
      {labelOf(stock, entry)}
    </label>
  );
}
