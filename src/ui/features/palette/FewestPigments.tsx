import { labelIn, type Studio } from '../../../palette/passage.ts';
import { joinWords, midSentence } from '../../../wording.ts';
import { formatNumber } from '../../state/locale-format.ts';
import {
  fewestPigments,
  fewestProgress,
  searchFewestPigments,
  stopFewestSearch,
} from '../../state/palette/plan-job.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

/** The smallest sets of pigments for the day, with the colour difference of each pile. */
export function FewestPigments({ studio }: { studio: Studio }) {
  const found = fewestPigments.value;
  return (
    <>
      <h2>{paletteTexts.fewestHeading}</h2>
      <p>{paletteTexts.fewestLead}</p>
      {fewestProgress.value !== null ? (
        <p class="pal-actions" role="status">
          <progress max={1} value={fewestProgress.value} aria-label={paletteTexts.fewestHeading} />
          <button type="button" class="quiet" onClick={stopFewestSearch}>
            {paletteTexts.stop}
          </button>
        </p>
      ) : (
        found === null && (
          <p>
            <button type="button" onClick={() => void searchFewestPigments()}>
              {paletteTexts.seekFewest}
            </button>
          </p>
        )
      )}
      {found && (
        <>
          <ol class="pal-fewest">
            {found.curve.map(({ count, pigments, deltaE00, worst }) => (
              <li key={count}>
                <b>{paletteTexts.withSo(count)}</b>:{' '}
                {joinWords(pigments.map((pigment) => midSentence(labelIn(studio, pigment))))};{' '}
                {paletteTexts.worst(
                  formatNumber(worst, 1),
                  found.piles[deltaE00.indexOf(worst)]?.name ?? '',
                )}
                <details>
                  <summary>{paletteTexts.piles}</summary>
                  <ul>
                    {deltaE00.map((difference, i) => (
                      <li key={found.piles[i]?.name}>
                        {found.piles[i]?.name}: {formatNumber(difference, 1)}
                      </li>
                    ))}
                  </ul>
                </details>
              </li>
            ))}
          </ol>
          <p class="small">{paletteTexts.differenceOf}</p>
        </>
      )}
    </>
  );
}
