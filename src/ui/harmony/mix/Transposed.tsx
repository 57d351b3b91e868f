import { changeWords } from '../../../colour/words.ts';
import { moveWords } from '../../../harmony/told.ts';
import type { Moved } from '../../../harmony/transpose.ts';
import { figure } from '../../locale.ts';
import { farOf, mixSay } from '../../words/mixing.ts';
import { gatheredLabs, studied } from '../state.ts';
import { Disclosure } from './Disclosure.tsx';
import { Table } from './Table.tsx';
import {
  comparisonOf,
  isTransposed,
  move,
  movedWith,
  transposeAll,
  transposing,
} from './transposing.ts';
import { WorkLine } from './WorkLine.tsx';

/** The harmony's move within reach: its parameters, the change of each colour, and a comparison. */
export function Transposed() {
  const labs = gatheredLabs.value;
  const all = isTransposed.value ? move.value : null;
  return (
    <>
      <WorkLine work={transposing} words={mixSay.transposeWork} />
      {all && (
        <div class="mix-inside">
          <p class="small">{moveWords(all)}</p>
          <Disclosure heading={mixSay.movedHeading}>
            {() => (
              <div class="mix-inside">
                <ul class="mix-points">
                  {studied.value.map(({ gathered: { name, lab } }) => (
                    <li key={name}>
                      <strong>{name}</strong>: {changeWords(lab, movedWith(lab, labs, all))}
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
function keptWords({ lost }: Moved): string {
  const most = Math.max(lost.lightness / 2, lost.hueDeg / 4, lost.chroma / 0.1);
  if (most <= 0.5) return mixSay.intervals.kept;
  return most <= 1 ? mixSay.intervals.nearly : mixSay.intervals.lost;
}

function Comparison() {
  const labs = gatheredLabs.value;
  const found = comparisonOf(labs);
  if (!found)
    return transposing.progress.value !== null ? null : (
      <p>
        <button type="button" onClick={() => void transposeAll(labs)}>
          {mixSay.compareAgain}
        </button>
      </p>
    );
  const ways = ['transposed', 'keyed', 'alone'] as const;
  return (
    <>
      <Table label={mixSay.movedHeading}>
        <thead>
          <tr>
            <th scope="col">{mixSay.wayColumn}</th>
            <th scope="col">{mixSay.movedColumn}</th>
            <th scope="col">{mixSay.reachedColumn}</th>
            <th scope="col">{mixSay.lostColumn}</th>
          </tr>
        </thead>
        <tbody>
          {ways.map((way) => (
            <tr key={way}>
              <th scope="row">{mixSay.ways[way]}</th>
              <td>{mixSay.differsFromSeen[farOf(found[way].moved)]}</td>
              <td>{found[way].reached ? mixSay.yes : mixSay.no}</td>
              <td>{keptWords(found[way])}</td>
            </tr>
          ))}
        </tbody>
      </Table>
      <Disclosure heading={mixSay.figuresHeading}>
        {() => (
          <dl class="figures">
            {ways.map((way) => (
              <div key={way}>
                <dt>{mixSay.ways[way]}</dt>
                <dd>
                  {mixSay.movedColumn}: {mixSay.ciede(found[way].moved)}. {mixSay.lostFigures}:{' '}
                  {figure(found[way].lost.lightness, 1)}, {figure(found[way].lost.hueDeg, 1)},{' '}
                  {figure(found[way].lost.chroma, 2)}
                </dd>
              </div>
            ))}
          </dl>
        )}
      </Disclosure>
    </>
  );
}
