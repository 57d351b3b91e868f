import { bookFaultWords } from '../../messages/book-faults.ts';

import { hrefOf } from '../state/route.ts';
import { book, bookFault, isUnsaved, saveState } from '../state/studio.ts';
import { bookTexts } from '../texts/book-texts.ts';
import { sharedTexts } from '../texts/shared-texts.ts';

/** The save line. It shows "saved" only when everything is on disk. */
export function SaveLine() {
  const fault = bookFault.value;
  const state = saveState.value;
  if (state.state === 'not saved')
    return (
      <p class="save-line" role="status" data-state="not saved">
        <strong>{sharedTexts.notSaved}.</strong> {bookFaultWords(state.fault)}{' '}
        <button type="button" class="quiet" onClick={() => void book.value?.retry()}>
          {sharedTexts.tryAgain}
        </button>
        <a href={hrefOf('book', 'copies')}>{bookTexts.toCopies}</a>{' '}
        <button type="button" class="quiet" onClick={() => book.value?.saving.forget()}>
          {bookTexts.giveUp}
        </button>
      </p>
    );
  if (fault)
    return (
      <p class="save-line" role="status" data-state="not saved">
        <strong>{fault.code === 'newer-book' ? bookTexts.readOnly : sharedTexts.notSaved}.</strong>{' '}
        {bookFaultWords(fault)}
      </p>
    );
  if (book.value === null) return <p class="save-line" role="status" />;
  const isSaving = state.state === 'saving' || isUnsaved.value;
  return (
    <p class="save-line" role="status" data-state={isSaving ? 'saving' : 'saved'}>
      {/* A new element for new words, so that the change is no layout shift. */}
      <span key={isSaving}>{isSaving ? sharedTexts.saving : sharedTexts.saved}</span>
    </p>
  );
}
