import { useSignal, useSignalEffect } from '@preact/signals';
import { BIN_MS } from '../../../book/schema/bin-period.ts';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { VirtualList } from '../../components/VirtualList.tsx';
import { dateWords } from '../../state/locale-format.ts';
import { book, bookRevision, showError, showNotice } from '../../state/studio.ts';
import { bookTexts, KIND_WORDS } from '../../texts/book-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { useThumbnail } from './EntryThumbnail.tsx';
import { nameOfCard } from './entry-names.ts';

/** Deleted entries, with the date until which each is kept and a way to restore it. */
export function Bin() {
  const away = useSignal<readonly EntrySummary[] | null>(null);
  const isAsking = useSignal(false);
  useSignalEffect(() => {
    bookRevision.value;
    void book.value?.bin().then((list) => {
      if (list.ok) away.value = list.value;
      else showError(bookFaultWords(list.fault));
    });
  });
  if (away.value === null) return <p role="status">{sharedTexts.bookOpening}</p>;
  const { length } = away.value;
  if (length === 0) return <p class="lead">{bookTexts.binEmpty}</p>;
  const canWrite = book.value?.readOnly === null;
  return (
    <>
      <p>{bookTexts.binAbout}</p>
      {canWrite && !isAsking.value && (
        <p>
          <button
            type="button"
            onClick={() => {
              isAsking.value = true;
            }}
          >
            {bookTexts.emptyBin}
          </button>
        </p>
      )}
      {isAsking.value && (
        <div class="asking" role="alertdialog" aria-label={bookTexts.emptyBin}>
          <p>{bookTexts.emptyAsk(length)}</p>
          <p class="entry-actions">
            <button
              type="button"
              class="main"
              onClick={() => {
                isAsking.value = false;
                void empty();
              }}
            >
              {bookTexts.emptyYes}
            </button>
            <button
              type="button"
              ref={(leave) => leave?.focus()}
              onClick={() => {
                isAsking.value = false;
              }}
            >
              {sharedTexts.cancel}
            </button>
          </p>
        </div>
      )}
      <div class="bin-list">
        <VirtualList
          items={away.value}
          rem={6.5}
          label={bookTexts.listOfBin}
          keyOf={({ id }) => id}
          row={(card) => <Row card={card} canWrite={canWrite} />}
        />
      </div>
    </>
  );
}

function Row({ card, canWrite }: { card: EntrySummary; canWrite: boolean }) {
  const url = useThumbnail(card);
  const name = nameOfCard(card);
  const until = new Date(Date.parse(card.deletedAt!) + BIN_MS).toISOString();
  return (
    <div class="row">
      <span class="row-picture">{url && <img src={url} alt="" width="72" height="72" />}</span>
      <span class="row-words">
        <span class="row-name">{name}</span>
        <span class="small">{bookTexts.binUntil(KIND_WORDS[card.kind], dateWords(until))}</span>
      </span>
      {canWrite && (
        <button
          type="button"
          aria-label={`${bookTexts.restore}: ${name}`}
          onClick={() => void putBack(card)}
        >
          {bookTexts.restore}
        </button>
      )}
    </div>
  );
}

async function putBack(card: EntrySummary): Promise<void> {
  const here = book.value;
  if (!here) return;
  const back = await here.restore(card.id);
  if (!back.ok) return showError(bookFaultWords(back.fault));
  showNotice(bookTexts.restored(nameOfCard(card)), async () => {
    const away = await here.remove(card.id);
    return away.ok ? { ok: true, value: null } : away;
  });
}

async function empty(): Promise<void> {
  const emptied = await book.value?.emptyBin(new Date().toISOString());
  if (emptied?.ok) showNotice(bookTexts.emptied(emptied.value));
  else if (emptied) showError(bookFaultWords(emptied.fault));
}
