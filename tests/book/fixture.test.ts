import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import { upgraded } from '../../src/book/schema/record.ts';
import { MIGRATION_STEPS, moveTable } from '../../src/book/store/database.ts';
import { openBook } from '../../src/book/store/open-book.ts';
import { gatheringOf } from '../../src/book/store/save-specimen.ts';
import { createSearchIndex } from '../../src/book/store/search-index.ts';
import { importCopy } from '../../src/book/transfer/copies.ts';
import { openCopy } from '../../src/book/transfer/unpack.ts';
import { freshDisk, harmonyBodyOf, must, openMade } from './made.ts';

// Books and copies as earlier versions left them. A fixture is never edited; every one of them opens.
const fixture = (name: string) => resolve(import.meta.dirname, 'fixtures', name);

interface Stored {
  readonly id: string;
  readonly type: string;
  /** Base64. */
  readonly bytes: string;
}
interface Dump {
  readonly records: readonly object[];
  readonly cards: readonly object[];
  readonly files: readonly Stored[];
  readonly thumbnails: readonly Stored[];
  readonly meta: Readonly<Record<string, string>>;
}

/** The database as version 1 made it, written down apart from the code that may change. */
async function lay(dump: Dump): Promise<void> {
  const database = await openDB('studio-book', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('records', { keyPath: 'id' });
      const cards = fresh.createObjectStore('cards', { keyPath: 'id' });
      cards.createIndex('kind', 'kind');
      cards.createIndex('deletedAt', 'deletedAt');
      cards.createIndex('files', 'files', { multiEntry: true });
      fresh.createObjectStore('files', { keyPath: 'id' });
      fresh.createObjectStore('thumbnails', { keyPath: 'id' });
      fresh.createObjectStore('meta');
    },
  });
  for (const row of dump.records) await database.put('records', row);
  for (const row of dump.cards) await database.put('cards', row);
  for (const table of ['files', 'thumbnails'] as const)
    for (const { bytes, ...row } of dump[table])
      await database.put(table, {
        ...row,
        bytes: new Uint8Array(Buffer.from(bytes, 'base64')).buffer,
      });
  for (const [key, value] of Object.entries(dump.meta)) await database.put('meta', value, key);
  database.close();
}

const dump = (): Dump => JSON.parse(readFileSync(fixture('book-1.json'), 'utf8'));

beforeEach(() => {
  freshDisk();
});

describe('a book of version 1', () => {
  beforeEach(() => lay(dump()));

  test('opens with all that it had', async () => {
    const book = await openMade();
    expect([book.readOnly, book.device]).toEqual([null, 'fixture-0001']);
    const cards = must(await book.list());
    expect(cards.map(({ kind, name }) => `${kind} ${name}`).sort()).toEqual([
      'harmony Mill race, ours',
      'harmony Mill race, theirs',
      'shelf North room',
      'specimen Mill race',
    ]);
    expect(must(await book.bin()).map(({ name }) => name)).toEqual(['In the bin']);
    expect(must(await book.recall('draft'))).toBe('a name not yet saved');

    const specimen = cards.find(({ kind }) => kind === 'specimen')!;
    const entry = must(await book.get('specimen', specimen.id));
    expect(entry.body).toMatchObject({ light: 'overcast', place: 'the weir', walk: 'May' });
    const gathered = await gatheringOf(book, entry);
    expect([...gathered!.labels.data]).toEqual([0, 0, 1, 1, 0, 0, 1, 1, 255, 0, 1, 1]);
    const photograph = must(await book.photograph(entry.body.photo.file));
    expect(photograph.bytes.byteLength).toBe(entry.body.photo.size);
    expect(must(await book.thumbnail(specimen))?.type).toBe('image/jpeg');
    for (const { id } of cards.filter(({ kind }) => kind === 'harmony'))
      expect(must(await book.get('harmony', id)).body.colours.length).toBe(2);
  });

  test('is found in, and can be gone on with', async () => {
    const book = await openMade();
    const index = createSearchIndex(must(await book.list()));
    const found = index.search({ colour: { lab: [42, 6, 18], within: 0.5 } });
    expect(found.map(({ card }) => card.name)).toEqual(['Mill race']);
    expect(index.search({ pigments: ['raw-umber'], words: 'theirs' }).length).toBe(1);
    const [harmony] = index.search({ words: 'ours' });
    const id = harmony!.card.id;
    const put = must(await book.put({ kind: 'harmony', id, body: harmonyBodyOf('Gone on') }));
    expect(put.entry.clock > String(dump().meta.clock)).toBe(true);
    expect(must(await book.restore(must(await book.bin())[0]!.id))).toBeNull();
  });
});

test('a copy of version 1 is brought in', async () => {
  const bytes = new Uint8Array(readFileSync(fixture('copy-1.zip')));
  const copy = must(await openCopy(bytes, { subtle: crypto.subtle }));
  expect([copy.records.length, copy.files.size, copy.thumbnails.size]).toEqual([6, 3, 1]);
  const book = await openMade();
  must(await importCopy(book, copy));
  expect(must(await book.list()).length).toBe(4);
});

describe('steps to come', () => {
  // What a step that changes the form of a table will look like.
  type Step = (typeof MIGRATION_STEPS)[number];
  const stepThat = (sound: (row: unknown) => boolean): Step => {
    return async (database, upgrade) => {
      const shout = (row: unknown) => ({ ...(row as object), loud: true });
      await moveTable(database, upgrade, 'thumbnails', 'small', shout, sound);
    };
  };
  const small = async () => {
    const database = await openDB('studio-book');
    const names = [...database.objectStoreNames];
    const rows = await database.getAll(names.includes('small') ? 'small' : 'thumbnails');
    database.close();
    return { names, rows };
  };

  test('copy, verify, then switch', async () => {
    await lay(dump());
    const { rows: before } = await small();
    const step = stepThat((row) => (row as { loud?: true }).loud === true);
    must(await openBook({ steps: [...MIGRATION_STEPS, step], channel: null })).close();
    const { names, rows } = await small();
    expect(names).not.toContain('thumbnails');
    expect(rows).toEqual(before.map((row) => ({ ...row, loud: true })));
  });

  test('that do not verify leave the older book', async () => {
    await lay(dump());
    const before = await small();
    const refused = await openBook({
      steps: [...MIGRATION_STEPS, stepThat(() => false)],
      channel: null,
    });
    expect(refused).toMatchObject({ ok: false, fault: { code: 'not-opened' } });
    expect(await small()).toEqual(before);
    expect(must(await (await openMade()).list()).length).toBe(4);
  });

  test('take an entry through every schema in turn', () => {
    const steps = [
      (older: object) => ({ ...older, second: true }),
      (older: object) => ({ ...older, third: 'second' in older }),
    ];
    expect(upgraded({ schema: 1 }, steps)).toEqual({ schema: 3, second: true, third: true });
    expect(upgraded({ schema: 2 }, steps)).toEqual({ schema: 3, third: false });
    expect(upgraded({ schema: 3 }, steps)).toEqual({ schema: 3 });
    for (const odd of [{}, { schema: 0 }, { schema: -4 }, { schema: 1.5 }, { schema: '1' }])
      expect(upgraded(odd, steps)).toEqual(odd);
  });
});
