import { hexOf, labOfHex } from '../../colour/hex.ts';
import { nameOf } from '../../colour/words.ts';
import { Patch } from '../drawn/Patch.tsx';
import { sayBook } from '../words/book.ts';
import { colour, coloursThere, within } from './state.ts';

const EDGE = 44;

/** Search by colour: one of the book's own colours or any other, and the maximum difference. */
export function ColourChoice() {
  const now = colour.value;
  const hex = now ? hexOf(now) : null;
  return (
    <fieldset class="colour-choice">
      <legend>{sayBook.colour}</legend>
      {coloursThere.value.length > 0 && (
        <ul class="strokes" aria-label={sayBook.colourFromBook}>
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
                    colour.value = own === hex ? null : lab;
                  }}
                >
                  <svg viewBox={`0 0 ${EDGE} ${EDGE}`} aria-hidden="true">
                    <Patch
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
        {sayBook.colourOther}
        <input
          type="color"
          value={hex ?? '#7f7f7f'}
          onInput={(event) => {
            colour.value = labOfHex(event.currentTarget.value);
          }}
        />
      </label>
      {now && (
        <>
          <label>
            {sayBook.within}
            <input
              type="range"
              min="1"
              max="25"
              step="1"
              value={within}
              aria-valuetext={sayBook.withinNow(sayBook.withinWords(within.value), within.value)}
              onInput={(event) => {
                within.value = event.currentTarget.valueAsNumber;
              }}
            />
          </label>
          <p class="small">{sayBook.withinNow(sayBook.withinWords(within.value), within.value)}</p>
        </>
      )}
    </fieldset>
  );
}
