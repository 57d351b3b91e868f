import { suggestionWords } from '../../../messages/calibration-messages.ts';
import { JobProgress } from '../../components/JobProgress.tsx';
import { formatNumber } from '../../state/locale-format.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { goTo } from './calibration-routes.ts';
import { fitFault, fitNow, fitting, suggestions } from './curve-fit.ts';
import { compositionWords, setCardOptions } from './swatch-cards.ts';

/** The swatches that would add the most evidence, with reasons. */
export function SuggestedSwatches() {
  const some = suggestions.value;
  const stock = ownStock.value;
  if (some === null)
    return (
      <>
        <JobProgress work={fitting} words={calibrationTexts.fitting} />
        {fitting.progress.value === null && fitFault.value !== '' && (
          <p class="small">{fitFault.value}</p>
        )}
        {fitting.progress.value === null && fitFault.value === '' && (
          <p>
            <button type="button" class="quiet" onClick={() => void fitNow()}>
              {calibrationTexts.nextAsk}
            </button>
          </p>
        )}
      </>
    );
  return (
    <div class="swatch-next">
      <h3>{calibrationTexts.nextHeading}</h3>
      {some.length === 0 && <p>{calibrationTexts.nextNone}</p>}
      <ol>
        {some.map((one) => (
          <li key={compositionWords(one.parts, stock)}>
            <strong>{compositionWords(one.parts, stock)}.</strong>{' '}
            {suggestionWords(one, formatNumber)}
          </li>
        ))}
      </ol>
      {some.length > 0 && (
        <p>
          <button
            type="button"
            onClick={() => {
              setCardOptions({ paints: [], piles: some.map(({ parts }) => parts) });
              goTo('new');
            }}
          >
            {calibrationTexts.nextCard}
          </button>
        </p>
      )}
    </div>
  );
}
