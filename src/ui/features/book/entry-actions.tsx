import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import type { Bodies, Entry, Kind } from '../../../book/schema/record.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { book, showError, showNotice } from '../../state/studio.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { nameOfCard } from './entry-names.ts';

/**
 * Moves an entry to the bin.
 * @returns true on success
 */
export async function putIntoBin(card: EntrySummary): Promise<boolean> {
  const removed = await book.value?.remove(card.id);
  if (removed?.ok) showNotice(sharedTexts.removed(nameOfCard(card)), removed.value.undo);
  else if (removed) showError(bookFaultWords(removed.fault));
  return removed?.ok === true;
}

async function rename<K extends Kind>(
  card: EntrySummary & { kind: K },
  name: string,
): Promise<void> {
  const here = book.value;
  if (!here || name === card.name) return;
  const found = await here.get(card.kind, card.id);
  if (!found.ok) return showError(bookFaultWords(found.fault));
  const over: Entry<K> = found.value;
  const body = { ...over.body, name } as Bodies[K];
  const put = await here.put<K>({ kind: card.kind, id: card.id, over, body });
  if (put.ok) showNotice(sharedTexts.renamed(name), put.value.undo);
  else showError(bookFaultWords(put.fault));
}

/** Form for renaming an entry. */
export function Renaming({ card, done }: { card: EntrySummary; done: () => void }) {
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const text = new FormData(event.currentTarget as HTMLFormElement).get('name');
    void rename(card, String(text ?? '').trim()).then(done);
  };
  return (
    <form class="renaming" onSubmit={submit}>
      <label>
        {sharedTexts.nameOf}
        <input name="name" type="text" maxLength={200} defaultValue={card.name} ref={focused} />
      </label>
      <p class="entry-actions">
        <button type="submit">{sharedTexts.rename}</button>
        <button type="button" class="quiet" onClick={done}>
          {sharedTexts.cancel}
        </button>
      </p>
    </form>
  );
}

const focused = (input: HTMLInputElement | null) => {
  input?.focus();
};
