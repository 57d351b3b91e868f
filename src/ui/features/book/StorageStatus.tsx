import { useEffect, useState } from 'preact/hooks';
import { isSample } from '../../../book/schema/sample-ids.ts';
import { copyIsDue, roomOf } from '../../../book/store/persistent-storage.ts';
import { keepingWords } from '../../../messages/storage-messages.ts';
import { InstallOffer } from '../../app/InstallHint.tsx';
import { dateWords } from '../../state/locale-format.ts';
import { hrefOf } from '../../state/route.ts';
import { isAsked, lastCopyTime, storagePromise } from '../../state/storage-promise.ts';
import { bookTexts, fileSizeWords } from '../../texts/book-texts.ts';
import { entrySummaries } from './entry-list.ts';

/** Number of the painter's own entries that changed since the last copy. */
export const changedSince = (): number =>
  (entrySummaries.value ?? []).filter(
    ({ id, changed }) => !isSample(id) && changed > (lastCopyTime.value ?? ''),
  ).length;

/** Reminds of making a copy when one is due; otherwise renders nothing. */
export function CopyReminder() {
  const last = lastCopyTime.value;
  const changed = changedSince();
  if (!copyIsDue({ last, changed }, Date.now())) return null;
  return (
    <div class="reminder">
      <p>
        <strong>{bookTexts.reminder}</strong>{' '}
        {last === null
          ? bookTexts.unsavedCopies(changed)
          : `${bookTexts.lastCopy(dateWords(last))} ${bookTexts.changedSince(changed)}`}{' '}
        <a href={hrefOf('book', 'copies')}>{bookTexts.toCopies}</a>
      </p>
    </div>
  );
}

/** The browser's storage promise, and the space used and available. */
export function StorageStatus() {
  const [room, setRoom] = useState<{ readonly used: number; readonly left: number } | null>(null);
  useEffect(() => {
    void roomOf(navigator.storage).then(setRoom);
  }, []);
  const answer = storagePromise.value;
  const unanswered = isAsked.value ? bookTexts.keepingAsked : bookTexts.keepingLater;
  return (
    <section class="part" aria-labelledby="keeping-heading">
      <h2 id="keeping-heading">{bookTexts.keepingHeading}</h2>
      <p>{answer === null ? unanswered : keepingWords[answer]}</p>
      <InstallOffer />
      {room && (
        <p class="small">{bookTexts.room(fileSizeWords(room.used), fileSizeWords(room.left))}</p>
      )}
    </section>
  );
}
