import { fail, ok, type Result } from '../../result.ts';
import type { BookFault } from '../schema/book-fault.ts';
import { type EntrySummary, summaryOfEntry } from '../schema/entry-summary.ts';
import { type Entry, hasBody, type Kind, readRecord } from '../schema/record.ts';
import type { StoredFile } from './database.ts';
import type { BookGateway } from './gateway.ts';

export interface Reader {
  get<K extends Kind>(kind: K, id: string): Promise<Result<Entry<K>, BookFault>>;
  /** Summaries of one kind or of all, most recently changed first, without entries in the bin. */
  list(kind?: Kind): Promise<Result<readonly EntrySummary[], BookFault>>;
  /** Summaries of deleted entries, most recently deleted first. */
  bin(): Promise<Result<readonly EntrySummary[], BookFault>>;
  photograph(file: string): Promise<Result<StoredFile, BookFault>>;
  /** The value is null when there is no thumbnail. */
  thumbnail(card: EntrySummary): Promise<Result<StoredFile | null, BookFault>>;
}

/**
 * Read access to the book.
 * @param fromNewer the book is of a newer version, so its stored summaries may have another form;
 *   they are built from the readable entries instead
 */
export function createReader({ read }: BookGateway, fromNewer: boolean): Reader {
  const cardsOf = (kind?: Kind): Promise<Result<EntrySummary[], BookFault>> =>
    fromNewer
      ? read(['records'], async (transaction) => {
          const records = await transaction.objectStore('records').getAll();
          return records.flatMap((raw) => {
            const record = readRecord(raw);
            const card = record.ok ? summaryOfEntry(record.value) : null;
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
