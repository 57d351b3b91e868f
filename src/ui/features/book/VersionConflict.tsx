import { useEffect, useState } from 'preact/hooks';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { ConflictChoice } from '../../../book/store/resolve-conflict.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { BrushStroke } from '../../components/drawn/BrushStroke.tsx';
import { momentWords } from '../../state/locale-format.ts';
import { go, hrefOf } from '../../state/route.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { book, showError, showNotice } from '../../state/studio.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { conflictPairs, entrySummaries } from './entry-list.ts';
import { nameOfCard, pigmentWords } from './entry-names.ts';
import { differencesOf, type Side, type VersionDifference } from './version-differences.ts';

/**
 * The two versions of an entry in conflict: their differences side by side, and the choice between
 * them.
 */
export function VersionConflict({ card }: { card: EntrySummary }) {
  const pair = conflictPairs.value.find((both) => both.includes(card.id));
  if (!pair) return null;
  const [inForce, beside] = pair.map((id) => entrySummaries.value?.find((one) => one.id === id));
  if (!inForce || !beside) return null;
  return <Comparison key={pair.join()} inForce={inForce} beside={beside} open={card.id} />;
}

interface Both {
  readonly inForce: EntrySummary;
  readonly beside: EntrySummary;
}

function Comparison({ inForce, beside, open }: Both & { open: string }) {
  const entries = useEntries(inForce, beside);
  const canWrite = book.value?.readOnly === null;
  const settle = (kept: ConflictChoice) => void end({ inForce, beside }, kept);
  return (
    <section class="versions" aria-labelledby="versions-heading">
      <h3 id="versions-heading">{bookTexts.conflictHeading}</h3>
      <p>{bookTexts.conflictAbout}</p>
      <ul class="version-names">
        {[inForce, beside].map((one) => (
          <li key={one.id}>
            <span class="version-mark">
              {one === inForce ? bookTexts.conflictNow : bookTexts.conflictBeside}
            </span>{' '}
            {one.id === open ? (
              <strong>{nameOfCard(one)}</strong>
            ) : (
              <a href={hrefOf('book', one.id)}>{nameOfCard(one)}</a>
            )}
            <span class="small">{bookTexts.conflictWritten(momentWords(one.changed))}</span>
          </li>
        ))}
      </ul>
      {entries && <Differences differences={differencesOf(...entries, pigmentWords)} />}
      {canWrite && (
        <p class="entry-actions">
          <button type="button" onClick={() => settle('the one in force')}>
            {bookTexts.keepNow}
          </button>
          <button type="button" onClick={() => settle('the one beside')}>
            {bookTexts.keepBeside}
          </button>
          <button type="button" onClick={() => settle('both')}>
            {bookTexts.keepBoth}
          </button>
        </p>
      )}
    </section>
  );
}

function Differences({ differences }: { differences: readonly VersionDifference[] }) {
  if (differences.length === 0) return <p>{bookTexts.conflictSame}</p>;
  return (
    <table class="differences">
      <caption class="unseen">{bookTexts.conflictWhat}</caption>
      <thead>
        <tr>
          <th scope="col">{bookTexts.conflictWhat}</th>
          <th scope="col">{bookTexts.conflictNow}</th>
          <th scope="col">{bookTexts.conflictBeside}</th>
        </tr>
      </thead>
      <tbody>
        {differences.map(({ what, sides, deltaE00 }) => (
          <tr key={`${what}|${sides[0].words}|${sides[1].words}`}>
            <th scope="row">
              {what}
              {deltaE00 !== null && (
                <span class="small">
                  {bookTexts.conflictDiffers(bookTexts.conflictDifference(deltaE00), deltaE00)}
                </span>
              )}
            </th>
            <Cell side={sides[0]} />
            <Cell side={sides[1]} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Cell({ side: { words, lab } }: { side: Side }) {
  return (
    <td>
      {lab && (
        <svg viewBox="0 0 96 40" width="96" height="40" aria-hidden="true">
          <BrushStroke hex={cssColourOf(lab)} seed={7} x={1} y={2} width={94} height={36} />
        </svg>
      )}
      <span>{words || (lab ? '' : bookTexts.conflictMissing)}</span>
    </td>
  );
}

function useEntries(inForce: EntrySummary, beside: EntrySummary): readonly [Entry, Entry] | null {
  const [entries, setEntries] = useState<readonly [Entry, Entry] | null>(null);
  useEffect(() => {
    let gone = false;
    const here = book.value;
    if (here)
      void Promise.all([inForce, beside].map(({ kind, id }) => here.get(kind, id))).then(
        ([one, other]) => {
          if (!gone && one?.ok && other?.ok) setEntries([one.value, other.value]);
        },
      );
    return () => {
      gone = true;
    };
  }, [inForce.changed, beside.changed]);
  return entries;
}

async function end({ inForce, beside }: Both, kept: ConflictChoice): Promise<void> {
  const settled = await book.value?.resolveConflict(inForce.id, beside.id, kept);
  if (!settled) return;
  if (!settled.ok) return showError(bookFaultWords(settled.fault));
  const name = nameOfCard(kept === 'the one beside' ? beside : inForce);
  showNotice(kept === 'both' ? bookTexts.keptBoth : bookTexts.keptOne(name), settled.value.undo);
  if (kept !== 'both') go('book', inForce.id);
}
