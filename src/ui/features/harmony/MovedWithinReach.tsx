import { changeWords } from '../../../colour/describe-colour.ts';
import type { MovedHarmony } from '../../../harmony/transpose.ts';
import { moveWords } from '../../../messages/transposition-text.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { JobProgress } from '../../components/JobProgress.tsx';
import { ScrollTable } from '../../components/ScrollTable.tsx';
import { gatheredLabs, harmonyColours } from '../../state/harmony/current-harmony.ts';
import {
  applyMoveTo,
  harmonyMove,
  isWithinReachShown,
  moveComparisonFor,
  moveJob,
  moveWithinReach,
} from '../../state/harmony/move-within-reach.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { differenceKey, mixtureTexts } from '../../texts/mixture-texts.ts';

/** The harmony's move within reach: its parameters, the change of each colour, and a comparison. */
export function MovedWithinReach() {
  const labs = gatheredLabs.value;
  const all = isWithinReachShown.value ? harmonyMove.value : null;
  return (
    <>
      <JobProgress work={moveJob} words={mixtureTexts.transposeWork} />
      {all && (
        <div class="mix-inside">
          <p class="small">{moveWords(all)}</p>
          <Disclosure heading={mixtureTexts.movedHeading}>
            {() => (
              <div class="mix-inside">
                <ul class="mix-points">
                  {harmonyColours.value.map(({ gathered: { name, lab } }) => (
                    <li key={name}>
                      <strong>{name}</strong>: {changeWords(lab, applyMoveTo(lab, labs, all))}
                    </li>
                  ))}
                </ul>
                <Comparison />
              </div>
            )}
          </Disclosure>
        </div>
      )}
    </>
  );
}

/**
 * Loss of intervals in words, by the largest of the three losses. Each is divided by the loss that
 * still counts as nearly preserved: 2 L*, 4° of hue, 0.1 in the logarithm of chroma.
 */
function keptWords({ lost }: MovedHarmony): string {
  const most = Math.max(lost.lightness / 2, lost.hueDeg / 4, lost.chroma / 0.1);
  if (most <= 0.5) return mixtureTexts.intervals.kept;
  return most <= 1 ? mixtureTexts.intervals.nearly : mixtureTexts.intervals.lost;
}

function Comparison() {
  const labs = gatheredLabs.value;
  const found = moveComparisonFor(labs);
  if (!found)
    return moveJob.progress.value !== null ? null : (
      <p>
        <button type="button" onClick={() => void moveWithinReach(labs)}>
          {mixtureTexts.compareAgain}
        </button>
      </p>
    );
  const ways = ['transposed', 'keyed', 'alone'] as const;
  return (
    <>
      <ScrollTable label={mixtureTexts.movedHeading}>
        <thead>
          <tr>
            <th scope="col">{mixtureTexts.wayColumn}</th>
            <th scope="col">{mixtureTexts.movedColumn}</th>
            <th scope="col">{mixtureTexts.reachedColumn}</th>
            <th scope="col">{mixtureTexts.lostColumn}</th>
          </tr>
        </thead>
        <tbody>
          {ways.map((way) => (
            <tr key={way}>
              <th scope="row">{mixtureTexts.ways[way]}</th>
              <td>{mixtureTexts.differsFromSeen[differenceKey(found[way].moved)]}</td>
              <td>{found[way].reached ? mixtureTexts.yes : mixtureTexts.no}</td>
              <td>{keptWords(found[way])}</td>
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      <Disclosure heading={mixtureTexts.figuresHeading}>
        {() => (
          <dl class="figures">
            {ways.map((way) => (
              <div key={way}>
                <dt>{mixtureTexts.ways[way]}</dt>
                <dd>
                  {mixtureTexts.movedColumn}: {mixtureTexts.ciede(found[way].moved)}.{' '}
                  {mixtureTexts.lostFigures}: {formatNumber(found[way].lost.lightness, 1)},{' '}
                  {formatNumber(found[way].lost.hueDeg, 1)},{' '}
                  {formatNumber(found[way].lost.chroma, 2)}
                </dd>
              </div>
            ))}
          </dl>
        )}
      </Disclosure>
    </>
  );
}
