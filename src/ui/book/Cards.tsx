import { useSignal, useSignalEffect } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import type { Kind } from '../../book/record.ts';
import { hexOf } from '../../colour/hex.ts';
import { BinIcon } from '../drawn/icons.tsx';
import { hrefOf } from '../route.ts';
import { book, complain, edition, tell } from '../studio.ts';
import { dateWords, say } from '../words.ts';

/** The entries of one kind, newest first, with what may be done to each. */
export function Cards({
  kind,
  having = '',
  empty,
}: {
  kind: Kind;
  /** Only entries in whose words this occurs. */
  having?: string;
  empty: ComponentChildren;
}) {
  const cards = useSignal<readonly Card[] | null>(null);
  useSignalEffect(() => {
    edition.value;
    const here = book.value;
    if (!here) return;
    void here.list(kind).then((list) => {
      if (list.ok) cards.value = list.value;
      else complain(bookFaultWords(list.fault));
    });
  });
  if (cards.value === null) return <p role="status">{say.bookOpening}</p>;
  if (cards.value.length === 0) return empty;
  const words = having.trim().toLowerCase();
  const shown = cards.value.filter((card) => card.words.includes(words));
  if (shown.length === 0) return <p>{say.nothingFound}</p>;
  return (
    <ul class="cards">
      {shown.map((card) => (
        <li key={card.id}>
          <EntryCard card={card} />
        </li>
      ))}
    </ul>
  );
}

function EntryCard({ card }: { card: Card }) {
  const [renaming, setRenaming] = useState(false);
  const name = card.name || say.unnamed;
  return (
    <article class="card">
      <a class="card-open" href={hrefOf('harmony', card.id)} aria-label={`${say.open}: ${name}`}>
        <CardPicture card={card} />
      </a>
      {renaming ? (
        <Renaming card={card} done={() => setRenaming(false)} />
      ) : (
        <h3>
          <a href={hrefOf('harmony', card.id)}>{name}</a>
        </h3>
      )}
      <p class="small">{dateWords(card.date)}</p>
      {!renaming && (
        <p class="card-actions">
          <button
            type="button"
            class="quiet"
            onClick={() => setRenaming(true)}
            aria-label={`${say.rename}: ${name}`}
          >
            {say.rename}
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => void remove(card.id, name)}
            aria-label={`${say.remove}: ${name}`}
          >
            <BinIcon size={20} />
            {say.remove}
          </button>
        </p>
      )}
    </article>
  );
}

function Renaming({ card, done }: { card: Card; done: () => void }) {
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const text = new FormData(event.currentTarget as HTMLFormElement).get('name');
    void rename(card, String(text ?? '').trim()).then(done);
  };
  return (
    <form class="renaming" onSubmit={submit}>
      <label>
        {say.nameOf}
        <input name="name" type="text" maxLength={200} defaultValue={card.name} ref={focused} />
      </label>
      <button type="submit">{say.rename}</button>
      <button type="button" class="quiet" onClick={done}>
        {say.cancel}
      </button>
    </form>
  );
}

const focused = (input: HTMLInputElement | null) => {
  input?.focus();
};

async function rename(card: Card, name: string): Promise<void> {
  const here = book.value;
  if (!here || name === card.name) return;
  const entry = await here.get(card.kind, card.id);
  if (!entry.ok) return complain(bookFaultWords(entry.fault));
  const { value } = entry;
  const put =
    value.kind === 'specimen'
      ? await here.put({
          kind: 'specimen',
          id: value.id,
          over: value,
          body: { ...value.body, name },
        })
      : await here.put({
          kind: 'harmony',
          id: value.id,
          over: value,
          body: { ...value.body, name },
        });
  if (put.ok) tell(say.renamed(name), put.value.undo);
  else complain(bookFaultWords(put.fault));
}

async function remove(id: string, name: string): Promise<void> {
  const removed = await book.value?.remove(id);
  if (removed?.ok) tell(say.removed(name), removed.value.undo);
  else if (removed) complain(bookFaultWords(removed.fault));
}

/** The photograph's small picture, over the colours that were gathered from it. */
function CardPicture({ card }: { card: Card }) {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    void book.value?.thumbnail(card).then((stored) => {
      if (gone || !stored.ok || stored.value === null) return;
      made = URL.createObjectURL(new Blob([stored.value.bytes], { type: stored.value.type }));
      setUrl(made);
    });
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [card.picture, card.specimen]);
  return (
    <span class="card-picture">
      {url ? <img src={url} alt="" width="320" height="240" /> : <span class="no-picture" />}
      <svg class="card-dabs" viewBox="0 0 320 44" aria-hidden="true">
        {dabs(card).map(({ x, r, hex }) => (
          <ellipse key={x} cx={x} cy="22" rx={r} ry={r * 0.86} fill={hex} />
        ))}
      </svg>
    </span>
  );
}

/** Its colours as dabs of paint: area as the share, the smallest still to be seen. */
function dabs({ colours }: Card): { x: number; r: number; hex: string }[] {
  let x = 10;
  return colours.map(({ lab, share }) => {
    const r = Math.max(5, 22 * Math.sqrt(share));
    x += 2 * r + 6;
    return { x: x - r - 6, r, hex: hexOf(lab) };
  });
}
