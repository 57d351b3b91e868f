import { useEffect, useState } from 'preact/hooks';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import type { Entry } from '../../book/record.ts';
import type { Kept } from '../../book/settle.ts';
import { Patch } from '../drawn/Patch.tsx';
import { shownOf } from '../drawn/screen.ts';
import { momentWords } from '../locale.ts';
import { go, hrefOf } from '../route.ts';
import { book, complain, tell } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { type Difference, differencesOf, type Side } from './differing.ts';
import { nameOfCard, pigmentWords } from './names.ts';
import { cards, pairs } from './state.ts';

/**
 * The two versions of an entry in conflict: their differences side by side, and the choice between
 * them.
 */
export function Versions({ card }: { card: Card }) {
  const pair = pairs.value.find((both) => both.includes(card.id));
  if (!pair) return null;
  const [inForce, beside] = pair.map((id) => cards.value?.find((one) => one.id === id));
  if (!inForce || !beside) return null;
  return <Comparison key={pair.join()} inForce={inForce} beside={beside} open={card.id} />;
}

interface Both {
  readonly inForce: Card;
  readonly beside: Card;
}

function Comparison({ inForce, beside, open }: Both & { open: string }) {
  const entries = useEntries(inForce, beside);
  const canWrite = book.value?.readOnly === null;
  const settle = (kept: Kept) => void end({ inForce, beside }, kept);
  return (
    <section class="versions" aria-labelledby="versions-heading">
      <h3 id="versions-heading">{sayBook.conflictHeading}</h3>
      <p>{sayBook.conflictAbout}</p>
      <ul class="version-names">
        {[inForce, beside].map((one) => (
          <li key={one.id}>
            <span class="version-mark">
              {one === inForce ? sayBook.conflictNow : sayBook.conflictBeside}
            </span>{' '}
            {one.id === open ? (
              <strong>{nameOfCard(one)}</strong>
            ) : (
              <a href={hrefOf('book', one.id)}>{nameOfCard(one)}</a>
            )}
            <span class="small">{sayBook.conflictWritten(momentWords(one.changed))}</span>
          </li>
        ))}
      </ul>
      {entries && <Differences differences={differencesOf(...entries, pigmentWords)} />}
      {canWrite && (
        <p class="entry-actions">
          <button type="button" onClick={() => settle('the one in force')}>
            {sayBook.keepNow}
          </button>
          <button type="button" onClick={() => settle('the one beside')}>
            {sayBook.keepBeside}
          </button>
          <button type="button" onClick={() => settle('both')}>
            {sayBook.keepBoth}
          </button>
        </p>
      )}
    </section>
  );
}

function Differences({ differences }: { differences: readonly Difference[] }) {
  if (differences.length === 0) return <p>{sayBook.conflictSame}</p>;
  return (
    <table class="differences">
      <caption class="unseen">{sayBook.conflictWhat}</caption>
      <thead>
        <tr>
          <th scope="col">{sayBook.conflictWhat}</th>
          <th scope="col">{sayBook.conflictNow}</th>
          <th scope="col">{sayBook.conflictBeside}</th>
        </tr>
      </thead>
      <tbody>
        {differences.map(({ what, sides, deltaE00 }) => (
          <tr key={`${what}|${sides[0].words}|${sides[1].words}`}>
            <th scope="row">
              {what}
              {deltaE00 !== null && (
                <span class="small">
                  {sayBook.conflictDiffers(sayBook.conflictDifference(deltaE00), deltaE00)}
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
          <Patch hex={shownOf(lab)} seed={7} x={1} y={2} width={94} height={36} />
        </svg>
      )}
      <span>{words || (lab ? '' : sayBook.conflictMissing)}</span>
    </td>
  );
}

function useEntries(inForce: Card, beside: Card): readonly [Entry, Entry] | null {
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

async function end({ inForce, beside }: Both, kept: Kept): Promise<void> {
  const settled = await book.value?.settle(inForce.id, beside.id, kept);
  if (!settled) return;
  if (!settled.ok) return complain(bookFaultWords(settled.fault));
  const name = nameOfCard(kept === 'the one beside' ? beside : inForce);
  tell(kept === 'both' ? sayBook.keptBoth : sayBook.keptOne(name), settled.value.undo);
  if (kept !== 'both') go('book', inForce.id);
}
