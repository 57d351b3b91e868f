import { labelIn, type Studio } from '../../palette/passage.ts';
import { joinWords, midSentence } from '../../wording.ts';
import { figure } from '../locale.ts';
import { sayPalette } from '../words/palette.ts';
import { fewest, seekFewest, seeking, stopSeeking } from './planning.ts';

/** The smallest sets of pigments for the day, with the colour difference of each pile. */
export function Fewest({ studio }: { studio: Studio }) {
  const found = fewest.value;
  return (
    <>
      <h2>{sayPalette.fewestHeading}</h2>
      <p>{sayPalette.fewestLead}</p>
      {seeking.value !== null ? (
        <p class="pal-actions" role="status">
          <progress max={1} value={seeking.value} aria-label={sayPalette.fewestHeading} />
          <button type="button" class="quiet" onClick={stopSeeking}>
            {sayPalette.stop}
          </button>
        </p>
      ) : (
        found === null && (
          <p>
            <button type="button" onClick={() => void seekFewest()}>
              {sayPalette.seekFewest}
            </button>
          </p>
        )
      )}
      {found && (
        <>
          <ol class="pal-fewest">
            {found.curve.map(({ count, pigments, deltaE00, worst }) => (
              <li key={count}>
                <b>{sayPalette.withSo(count)}</b>:{' '}
                {joinWords(pigments.map((pigment) => midSentence(labelIn(studio, pigment))))};{' '}
                {sayPalette.worst(
                  figure(worst, 1),
                  found.piles[deltaE00.indexOf(worst)]?.name ?? '',
                )}
                <details>
                  <summary>{sayPalette.piles}</summary>
                  <ul>
                    {deltaE00.map((difference, i) => (
                      <li key={found.piles[i]?.name}>
                        {found.piles[i]?.name}: {figure(difference, 1)}
                      </li>
                    ))}
                  </ul>
                </details>
              </li>
            ))}
          </ol>
          <p class="small">{sayPalette.differenceOf}</p>
        </>
      )}
    </>
  );
}
