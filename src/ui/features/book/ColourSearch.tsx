import { nameOf } from '../../../colour/describe-colour.ts';
import { hexOf, labOfHex } from '../../../colour/gamut-mapping.ts';
import { BrushStroke } from '../../components/drawn/BrushStroke.tsx';
import { bookTexts } from '../../texts/book-texts.ts';
import { coloursThere, searchColour, searchTolerance } from './entry-list.ts';

const EDGE = 44;

/** Search by colour: one of the book's own colours or any other, and the maximum difference. */
export function ColourSearch() {
  const now = searchColour.value;
  const hex = now ? hexOf(now) : null;
  return (
    <fieldset class="colour-choice">
      <legend>{bookTexts.colour}</legend>
      {coloursThere.value.length > 0 && (
        <ul class="strokes" aria-label={bookTexts.colourFromBook}>
          {coloursThere.value.map((lab) => {
            const own = hexOf(lab);
            return (
              <li key={lab.join()}>
                <button
                  type="button"
                  class="stroke"
                  aria-pressed={own === hex}
                  aria-label={nameOf(lab)}
                  title={nameOf(lab)}
                  onClick={() => {
                    searchColour.value = own === hex ? null : lab;
                  }}
                >
                  <svg viewBox={`0 0 ${EDGE} ${EDGE}`} aria-hidden="true">
                    <BrushStroke
                      hex={own}
                      seed={Number.parseInt(own.slice(1), 16)}
                      x={3}
                      y={5}
                      width={EDGE - 6}
                      height={EDGE - 10}
                    />
                  </svg>
                </button>
              </li>
            );
          })}
        </ul>
      )}
      <label class="colour-other">
        {bookTexts.colourOther}
        <input
          type="color"
          value={hex ?? '#7f7f7f'}
          onInput={(event) => {
            searchColour.value = labOfHex(event.currentTarget.value);
          }}
        />
      </label>
      {now && (
        <>
          <label>
            {bookTexts.within}
            <input
              type="range"
              min="1"
              max="25"
              step="1"
              value={searchTolerance}
              aria-valuetext={bookTexts.withinNow(
                bookTexts.withinWords(searchTolerance.value),
                searchTolerance.value,
              )}
              onInput={(event) => {
                searchTolerance.value = event.currentTarget.valueAsNumber;
              }}
            />
          </label>
          <p class="small">
            {bookTexts.withinNow(
              bookTexts.withinWords(searchTolerance.value),
              searchTolerance.value,
            )}
          </p>
        </>
      )}
    </fieldset>
  );
}
