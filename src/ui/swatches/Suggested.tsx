import { WorkLine } from '../harmony/mix/WorkLine.tsx';
import { said } from '../locale.ts';
import { ownStock } from '../shelf/state.ts';
import { saySwatches } from '../words/swatches.ts';
import { pileWords, want } from './cards.ts';
import { fitFault, fitNow, fitting, suggestions } from './fitting.ts';
import { goTo } from './routes.ts';

/** The swatches that would add the most evidence, with reasons. */
export function Suggested() {
  const some = suggestions.value;
  const stock = ownStock.value;
  if (some === null)
    return (
      <>
        <WorkLine work={fitting} words={saySwatches.fitting} />
        {fitting.progress.value === null && fitFault.value !== '' && (
          <p class="small">{said(fitFault.value)}</p>
        )}
        {fitting.progress.value === null && fitFault.value === '' && (
          <p>
            <button type="button" class="quiet" onClick={() => void fitNow()}>
              {saySwatches.nextAsk}
            </button>
          </p>
        )}
      </>
    );
  return (
    <div class="swatch-next">
      <h3>{saySwatches.nextHeading}</h3>
      {some.length === 0 && <p>{saySwatches.nextNone}</p>}
      <ol>
        {some.map(({ parts, why }) => (
          <li key={pileWords(parts, stock)}>
            <strong>{pileWords(parts, stock)}.</strong> {said(why)}
          </li>
        ))}
      </ol>
      {some.length > 0 && (
        <p>
          <button
            type="button"
            onClick={() => {
              want({ paints: [], piles: some.map(({ parts }) => parts) });
              goTo('new');
            }}
          >
            {saySwatches.nextCard}
          </button>
        </p>
      )}
    </div>
  );
}
