import { fail, ok, type Result } from '../result.ts';
import { type Card, cardOf } from './card.ts';
import type { StoredFile } from './database.ts';
import type { BookFault } from './faults.ts';
import type { Ledger } from './ledger.ts';
import { type Entry, hasBody, type Kind, readRecord } from './record.ts';

export interface Reader {
  get<K extends Kind>(kind: K, id: string): Promise<Result<Entry<K>, BookFault>>;
  /** Cards of one kind or all, newest change first, without what is in the bin. */
  list(kind?: Kind): Promise<Result<readonly Card[], BookFault>>;
  /** Cards of what was deleted, last deleted first. */
  bin(): Promise<Result<readonly Card[], BookFault>>;
  photograph(file: string): Promise<Result<StoredFile, BookFault>>;
  /** Null where there is none. */
  thumbnail(card: Card): Promise<Result<StoredFile | null, BookFault>>;
}

/**
 * Looks into the book; changes nothing.
 * @param fromNewer the book is of a newer version: its cards may have another form, so they are made
 *   from the entries that can be read
 */
export function createReader({ read }: Ledger, fromNewer: boolean): Reader {
  const cardsOf = (kind?: Kind): Promise<Result<Card[], BookFault>> =>
    fromNewer
      ? read(['records'], async (transaction) => {
          const records = await transaction.objectStore('records').getAll();
          return records.flatMap((raw) => {
            const record = readRecord(raw);
            const card = record.ok ? cardOf(record.value) : null;
            return card && (kind === undefined || card.kind === kind) ? [card] : [];
          });
        })
      : read(['cards'], (transaction) => {
          const cards = transaction.objectStore('cards');
          return kind === undefined ? cards.getAll() : cards.index('kind').getAll(kind);
        });

  return {
    async get<K extends Kind>(kind: K, id: string) {
      const raw = await read(['records'], (transaction) =>
        transaction.objectStore('records').get(id),
      );
      if (!raw.ok) return raw;
      if (!raw.value) return fail({ code: 'not-found' });
      const found = readRecord(raw.value);
      if (!found.ok) return found.fault.code === 'newer-record' ? found : fail({ code: 'damaged' });
      if (found.value.kind !== kind || !hasBody(found.value)) return fail({ code: 'not-found' });
      return ok(found.value as Entry<K>);
    },
    async list(kind) {
      const cards = await cardsOf(kind);
      if (!cards.ok) return cards;
      const kept = cards.value.filter(({ deletedAt }) => deletedAt === undefined);
      return ok(kept.sort((x, y) => (x.changed < y.changed ? 1 : -1)));
    },
    async bin() {
      const cards = await cardsOf();
      if (!cards.ok) return cards;
      const away = cards.value.filter(({ deletedAt }) => deletedAt !== undefined);
      return ok(away.sort((x, y) => (x.deletedAt! < y.deletedAt! ? 1 : -1)));
    },
    async photograph(file) {
      const found = await read(['files'], (transaction) =>
        transaction.objectStore('files').get(file),
      );
      if (!found.ok) return found;
      return found.value ? ok(found.value) : fail({ code: 'not-found' });
    },
    thumbnail: (card) =>
      read(['cards', 'thumbnails'], async (transaction) => {
        const { picture } = card.specimen
          ? ((await transaction.objectStore('cards').get(card.specimen)) ?? card)
          : card;
        if (picture === undefined) return null;
        return (await transaction.objectStore('thumbnails').get(picture)) ?? null;
      }),
  };
}
