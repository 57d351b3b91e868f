import { useSignal, useSignalEffect } from '@preact/signals';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { dateWords } from '../locale.ts';
import { book, complain, edition, tell } from '../studio.ts';
import { KIND_WORDS, sayBook } from '../words/book.ts';
import { say } from '../words/frame.ts';
import { Long } from './Long.tsx';
import { nameOfCard } from './names.ts';
import { useThumbnail } from './Picture.tsx';

const BIN_DAYS = 30;
const DAY_MS = 86_400_000;

/** Deleted entries, with the date until which each is kept and a way to restore it. */
export function Bin() {
  const away = useSignal<readonly Card[] | null>(null);
  const isAsking = useSignal(false);
  useSignalEffect(() => {
    edition.value;
    void book.value?.bin().then((list) => {
      if (list.ok) away.value = list.value;
      else complain(bookFaultWords(list.fault));
    });
  });
  if (away.value === null) return <p role="status">{say.bookOpening}</p>;
  const { length } = away.value;
  if (length === 0) return <p class="lead">{sayBook.binEmpty}</p>;
  const canWrite = book.value?.readOnly === null;
  return (
    <>
      <p>{sayBook.binAbout}</p>
      {canWrite && !isAsking.value && (
        <p>
          <button
            type="button"
            onClick={() => {
              isAsking.value = true;
            }}
          >
            {sayBook.emptyBin}
          </button>
        </p>
      )}
      {isAsking.value && (
        <div class="asking" role="alertdialog" aria-label={sayBook.emptyBin}>
          <p>{sayBook.emptyAsk(length)}</p>
          <p class="entry-actions">
            <button
              type="button"
              class="main"
              onClick={() => {
                isAsking.value = false;
                void empty();
              }}
            >
              {sayBook.emptyYes}
            </button>
            <button
              type="button"
              ref={(leave) => leave?.focus()}
              onClick={() => {
                isAsking.value = false;
              }}
            >
              {say.cancel}
            </button>
          </p>
        </div>
      )}
      <div class="bin-list">
        <Long
          items={away.value}
          rem={6.5}
          label={sayBook.listOfBin}
          keyOf={({ id }) => id}
          row={(card) => <Row card={card} canWrite={canWrite} />}
        />
      </div>
    </>
  );
}

function Row({ card, canWrite }: { card: Card; canWrite: boolean }) {
  const url = useThumbnail(card);
  const name = nameOfCard(card);
  const until = new Date(Date.parse(card.deletedAt!) + BIN_DAYS * DAY_MS).toISOString();
  return (
    <div class="row">
      <span class="row-picture">{url && <img src={url} alt="" width="72" height="72" />}</span>
      <span class="row-words">
        <span class="row-name">{name}</span>
        <span class="small">{sayBook.binUntil(KIND_WORDS[card.kind], dateWords(until))}</span>
      </span>
      {canWrite && (
        <button
          type="button"
          aria-label={`${sayBook.restore}: ${name}`}
          onClick={() => void putBack(card)}
        >
          {sayBook.restore}
        </button>
      )}
    </div>
  );
}

async function putBack(card: Card): Promise<void> {
  const here = book.value;
  if (!here) return;
  const back = await here.restore(card.id);
  if (!back.ok) return complain(bookFaultWords(back.fault));
  tell(sayBook.restored(nameOfCard(card)), async () => {
    const away = await here.remove(card.id);
    return away.ok ? { ok: true, value: null } : away;
  });
}

async function empty(): Promise<void> {
  const emptied = await book.value?.emptyBin(new Date().toISOString());
  if (emptied?.ok) tell(sayBook.emptied(emptied.value));
  else if (emptied) complain(bookFaultWords(emptied.fault));
}
