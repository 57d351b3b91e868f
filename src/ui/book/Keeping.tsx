import { useEffect, useState } from 'preact/hooks';
import { copyIsDue, keepingWords, roomOf } from '../../book/persist.ts';
import { isSample } from '../../book/sampled.ts';
import { InstallOffer } from '../install/InstallHint.tsx';
import { dateWords } from '../locale.ts';
import { hrefOf } from '../route.ts';
import { sayBook, sizeWords } from '../words/book.ts';
import { copied, isAsked, keeping } from './keeping.ts';
import { cards } from './state.ts';

/** Number of the painter's own entries that changed since the last copy. */
export const changedSince = (): number =>
  (cards.value ?? []).filter(({ id, changed }) => !isSample(id) && changed > (copied.value ?? ''))
    .length;

/** Reminds of making a copy when one is due; otherwise renders nothing. */
export function CopyReminder() {
  const last = copied.value;
  const changed = changedSince();
  if (!copyIsDue({ last, changed }, Date.now())) return null;
  return (
    <div class="reminder">
      <p>
        <strong>{sayBook.reminder}</strong>{' '}
        {last === null
          ? sayBook.unsavedCopies(changed)
          : `${sayBook.lastCopy(dateWords(last))} ${sayBook.changedSince(changed)}`}{' '}
        <a href={hrefOf('book', 'copies')}>{sayBook.toCopies}</a>
      </p>
    </div>
  );
}

/** The browser's storage promise, and the space used and available. */
export function Keeping() {
  const [room, setRoom] = useState<{ readonly used: number; readonly left: number } | null>(null);
  useEffect(() => {
    void roomOf(navigator.storage).then(setRoom);
  }, []);
  const answer = keeping.value;
  const unanswered = isAsked.value ? sayBook.keepingAsked : sayBook.keepingLater;
  return (
    <section class="part" aria-labelledby="keeping-heading">
      <h2 id="keeping-heading">{sayBook.keepingHeading}</h2>
      <p>{answer === null ? unanswered : keepingWords[answer]}</p>
      <InstallOffer />
      {room && <p class="small">{sayBook.room(sizeWords(room.used), sizeWords(room.left))}</p>}
    </section>
  );
}
