import { strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import sharp from 'sharp';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { mergeBooks } from '../../src/book/merge/merge-books.ts';
import type { AnyRecord } from '../../src/book/schema/record.ts';
import type { Book } from '../../src/book/store/open-book.ts';
import { saveSpecimen } from '../../src/book/store/save-specimen.ts';
import { importCopy, makeCopy } from '../../src/book/transfer/copies.ts';
import { INDEX, SEAL } from '../../src/book/transfer/copy-format.ts';
import { openCopy } from '../../src/book/transfer/unpack.ts';
import { bookFaultWords } from '../../src/messages/book-faults.ts';
import { freshDisk, harmonyBodyOf, must, NOON, openMade, picture } from './made.ts';

const { subtle } = crypto;
const COUNT = process.env.KINGCUP_SOAK === '1' ? 5000 : 300;

type Bytes = Uint8Array<ArrayBuffer>;
type Files = Record<string, Bytes>;
// biome-ignore lint/suspicious/noExplicitAny: an index to be made nonsense of
type Index = any;

/** The same numbers in every run. */
function randomsOf(seed: number) {
  let state = (seed * 2654435761) % 2147483647 || 1;
  const random = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const below = (count: number) => Math.floor(random() * count);
  return { random, below, some: <T>(from: readonly T[]): T => from[below(from.length)]! };
}
type Randoms = ReturnType<typeof randomsOf>;

let whole: Bytes;
let records: readonly AnyRecord[];
beforeAll(async () => {
  freshDisk();
  const book = await openMade();
  for (let i = 1; i <= 3; i++) {
    const kept = await saveSpecimen(book, picture(i), picture(i + 10), '2031-05-17');
    const specimen = must(kept).entry.id;
    const id = `harmony-000${i}`;
    must(await book.put({ kind: 'harmony', id, body: harmonyBodyOf(`Copied ${i}`, { specimen }) }));
  }
  must(await book.remove('harmony-0003'));
  const made = must(await makeCopy(book, { nowMs: NOON }));
  whole = new Uint8Array(await new Blob([...made.pieces]).arrayBuffer());
  records = must(await openCopy(whole, { subtle })).records;
  book.close();
});

const hex = async (bytes: Bytes) =>
  Buffer.from(await subtle.digest('SHA-256', bytes)).toString('hex');

/** Packed and sealed anew, as somebody would who knows the form. */
async function sealed(files: Files, index: Index | string): Promise<Bytes> {
  const body = strToU8(typeof index === 'string' ? index : JSON.stringify(index)) as Bytes;
  const seal = { format: 'kingcup-book', version: 1, sha256: await hex(body) };
  const entries: Zippable = {};
  for (const [name, bytes] of Object.entries(files)) entries[name] = [bytes, { level: 0 }];
  entries[INDEX] = body;
  entries[SEAL] = strToU8(JSON.stringify(seal));
  return new Uint8Array(zipSync(entries));
}

function opened(): { files: Files; index: Index } {
  const { [INDEX]: index, [SEAL]: _, ...files } = unzipSync(whole) as Files;
  return { files, index: JSON.parse(new TextDecoder().decode(index)) };
}

/** Where a text stands in bytes; every place. */
function places(bytes: Bytes, text: string): number[] {
  const found: number[] = [];
  const buffer = Buffer.from(bytes.buffer);
  for (let at = buffer.indexOf(text); at >= 0; at = buffer.indexOf(text, at + 1)) found.push(at);
  return found;
}

const someRecord = ({ some }: Randoms, index: Index) => some<Index>(index.records);

/** Ways to spoil a copy without knowing what it means. */
const BYTES: Record<string, (bytes: Bytes, randoms: Randoms) => Bytes> = {
  truncated: (bytes, { random }) => bytes.slice(0, random() * bytes.length),
  beheaded: (bytes, { random }) => bytes.slice(random() * bytes.length),
  flipped(bytes, { below }) {
    for (let n = 1 + below(8); n > 0; n--) bytes[below(bytes.length)]! ^= 1 << below(8);
    return bytes;
  },
  'flipped in its directory'(bytes, { below }) {
    const from = places(bytes, 'PK\u0001\u0002')[0]!;
    bytes[from + below(bytes.length - from)]! ^= 1 << below(8);
    return bytes;
  },
  overwritten(bytes, { below }) {
    const from = below(bytes.length);
    return bytes.fill(below(256), from, from + below(200));
  },
  doubled: (bytes) => new Uint8Array(Buffer.concat([bytes, bytes])),
  'with something hung on': (bytes, { below }) =>
    new Uint8Array(Buffer.concat([bytes, new Uint8Array(below(70_000))])),
  'with huge declared sizes'(bytes, { some, below }) {
    const at = some(places(bytes, 'PK\u0001\u0002'));
    new DataView(bytes.buffer).setUint32(at + some([20, 24]), 0xfff0_0000 + below(1000), true);
    return bytes;
  },
  'with lying sizes'(bytes, { some, below }) {
    const at = some(places(bytes, 'PK\u0001\u0002'));
    new DataView(bytes.buffer).setUint32(at + some([20, 24]), below(3000), true);
    return bytes;
  },
  'with a huge number of entries'(bytes) {
    const view = new DataView(bytes.buffer);
    view.setUint16(places(bytes, 'PK\u0005\u0006')[0]! + 10, 0xfffe, true);
    view.setUint16(places(bytes, 'PK\u0005\u0006')[0]! + 8, 0xfffe, true);
    return bytes;
  },
  'with a hostile name'(bytes, { some }) {
    const name = some([
      '../../etc/passwd',
      '__proto__',
      '/kingcup.json',
      'C:\\kingcup.json',
      '\0\0\0',
    ]);
    const at = some(places(bytes, 'photographs/'));
    Buffer.from(bytes.buffer).write(name, at, 'latin1');
    return bytes;
  },
};

/** Ways to spoil what it says, sealed again. */
const MEANING: Record<string, (files: Files, index: Index, randoms: Randoms) => unknown> = {
  'with a photograph of other bytes'(files, _index, { some, below }) {
    const name = some(Object.keys(files));
    files[name] = files[name]!.slice();
    files[name][below(files[name].length)]! ^= 4;
  },
  'without a photograph': (files, _index, { some }) => delete files[some(Object.keys(files))],
  'with a wrong hash'(_files, index, { some }) {
    some<Index>(index.files).sha256 = 'f'.repeat(64);
  },
  'without a listed file': (_files, index, { below }) =>
    index.files.splice(below(index.files.length), 1),
  'with a name of its own'(_files, index, { some }) {
    some<Index>(index.files).id = '../../../../etc/passwd';
  },
  'with hostile names beside'(files, _index, { some }) {
    files[some(['../../x.jpg', 'constructor', 'photographs/../book.json', 'a\u202ebook.json'])] =
      strToU8('x') as Bytes;
  },
  'with a field too many'(_files, index, randoms) {
    someRecord(randoms, index).extra = 1;
  },
  'without a field'(_files, index, randoms) {
    const record = someRecord(randoms, index);
    delete record[randoms.some(Object.keys(record))];
  },
  'with a field of another kind'(_files, index, randoms) {
    const record = someRecord(randoms, index);
    const wrong = randoms.some<unknown>([null, -1, [], {}, '', 1e300, true, 'x'.repeat(99)]);
    record[randoms.some(Object.keys(record))] = wrong;
  },
  'with a body of another kind'(_files, index, randoms) {
    const { body } = someRecord(randoms, index);
    const wrong = randoms.some<unknown>([null, -1, [[]], {}, 'x'.repeat(30_000), 1e300, true]);
    if (body) body[randoms.some(Object.keys(body))] = wrong;
  },
  'with an entry twice': (_files, index, randoms) => index.records.push(someRecord(randoms, index)),
  'from a newer schema'(_files, index, randoms) {
    someRecord(randoms, index).schema = 2;
  },
  'of an unknown kind'(_files, index, randoms) {
    someRecord(randoms, index).kind = randoms.some(['constructor', '__proto__', 'picture']);
  },
  'with a clock beyond all time'(_files, index, randoms) {
    const record = someRecord(randoms, index);
    record.clock = '999999999999999.99999';
    record.seen[record.device] = [[record.clock, record.clock]];
  },
  'with a clock far ahead'(_files, index, randoms) {
    const record = someRecord(randoms, index);
    record.clock = '253402300799999.99999';
    record.seen[record.device] = [[record.clock, record.clock]];
  },
  'that claims to keep its own version'(_files, index, randoms) {
    const record = someRecord(randoms, index);
    record.conflict = { of: record.id, seen: record.seen };
  },
  'that claims to have outgrown an entry'(_files, index, randoms) {
    const [record, other] = [someRecord(randoms, index), someRecord(randoms, index)];
    record.conflict = { of: randoms.some([other.id, 'local-0001']), seen: other.seen };
  },
  'with prototype keys': (_files, index) =>
    JSON.stringify(index).replace(/"(note|body|seen)":/, (key) => `"__proto__":{"x":1},${key}`),
  'with constructor keys': (_files, index) =>
    JSON.stringify(index).replace(/"(seen)":\{/, (key) => `${key}"constructor":[["0","1"]],`),
  'with deep JSON': (_files, index, { below }) => {
    const deep = 100 + below(100_000);
    const note = `${'['.repeat(deep)}${']'.repeat(deep)}`;
    return JSON.stringify(index).replace('"records":', `"more":${note},"records":`);
  },
  'with deep conflicts'(_files, index, randoms) {
    const record = someRecord(randoms, index);
    for (let n = 0; n < 300; n++)
      record.conflict = { of: record.id, seen: record.seen, before: record.conflict };
  },
  'of a future copy': (_files, index) => {
    index.version = 2;
  },
  'with half its texts cut': (_files, index, { random }) => {
    const json = JSON.stringify(index);
    return json.slice(0, random() * json.length);
  },
  'with letters that are none': (_files, index) =>
    JSON.stringify(index).replace('Copied', 'Cop\ud800ied'),
};

/** What the painter had before; a spoilt copy must never touch it. */
async function withLocal(): Promise<Book> {
  freshDisk();
  const book = await openMade();
  must(await saveSpecimen(book, picture(21), picture(22), '2031-05-18'));
  must(await book.put({ kind: 'harmony', id: 'local-0001', body: harmonyBodyOf('Local') }));
  return book;
}

async function kept(book: Book) {
  return must(
    await book.gateway.read(['records', 'files'], (transaction) =>
      Promise.all([
        transaction.objectStore('records').getAll(),
        transaction.objectStore('files').getAllKeys(),
      ]),
    ),
  );
}

let book: Book;
let local: Awaited<ReturnType<typeof kept>>;
beforeEach(async () => {
  book = await withLocal();
  local = await kept(book);
});

type Outcome = 'refused' | 'imported';

/** Opens and brings in; whatever happens, what was local is there, and what came is whole. */
async function bring(bytes: Bytes, how: string): Promise<Outcome> {
  const copy = await openCopy(bytes, { subtle });
  if (!copy.ok) {
    expect(bookFaultWords(copy.fault), how).toMatch(/nothing was brought in/);
    expect(await kept(book), how).toEqual(local);
    return 'refused';
  }
  const imported = await importCopy(book, copy.value);
  if (!imported.ok) {
    expect(bookFaultWords(imported.fault), how).toMatch(/\.$/);
    expect(await kept(book), how).toEqual(local);
    return 'refused';
  }
  const [after, files] = await kept(book);
  // An entry that claims to be another version of a local one may win: then both are kept.
  const bodies = after.map(({ body }) => body);
  for (const { body } of local[0]) expect(bodies, how).toContainEqual(body);
  for (const file of local[1]) expect(files, how).toContain(file);
  expect(Object.getPrototypeOf(copy.value.records[0] ?? {}), how).toBe(Object.prototype);
  expect(({} as Record<string, unknown>).x, how).toBeUndefined();
  return 'imported';
}

describe('a spoilt copy is refused with a sentence, or brought in as it was made', () => {
  const spoilers = Object.entries(BYTES);
  test(`bytes, ${COUNT / 2} times`, async () => {
    const counted: Record<Outcome, number> = { refused: 0, imported: 0 };
    for (let seed = 0; seed < COUNT / 2; seed++) {
      const randoms = randomsOf(seed + 1);
      const [how, spoil] = spoilers[seed % spoilers.length]!;
      const bytes = spoil(whole.slice(), randoms);
      const outcome = await bring(bytes, `${how}, seed ${seed}`);
      counted[outcome]++;
      if (outcome === 'refused') continue;
      const [after] = await kept(book);
      // The seal held, so every entry is exactly what was copied.
      expect(after, `${how}, seed ${seed}`).toEqual(mergeBooks(local[0], records));
      book.close();
      book = await withLocal();
      local = await kept(book);
    }
    expect(counted.refused).toBeGreaterThan(COUNT / 4);
    expect(counted.imported).toBeGreaterThan(3);
  });

  const liars = Object.entries(MEANING);
  test(`meaning, ${COUNT / 2} times`, async () => {
    const outcomes = new Map<string, Set<Outcome>>();
    for (let seed = 0; seed < COUNT / 2; seed++) {
      const randoms = randomsOf(seed + 1);
      const [how, spoil] = liars[seed % liars.length]!;
      const { files, index } = opened();
      const said = spoil(files, index, randoms);
      const bytes = await sealed(files, typeof said === 'string' ? said : index);
      const outcome = await bring(bytes, `${how}, seed ${seed}`);
      outcomes.set(how, (outcomes.get(how) ?? new Set()).add(outcome));
      if (outcome === 'refused') continue;
      book.close();
      book = await withLocal();
      local = await kept(book);
    }
    expect([...outcomes.keys()].toSorted()).toEqual(liars.map(([how]) => how).toSorted());
    const never = [...outcomes].filter(([, set]) => !set.has('imported')).map(([how]) => how);
    expect(never).toEqual(
      expect.arrayContaining([
        ...['with a photograph of other bytes', 'with a wrong hash', 'without a photograph'],
        ...['with a name of its own', 'with a field too many', 'with an entry twice'],
        ...['from a newer schema', 'of an unknown kind', 'with a clock beyond all time'],
        ...['with deep JSON', 'with deep conflicts', 'of a future copy', 'with half its texts cut'],
      ]),
    );
  });

  test('the untouched one is brought in', async () => {
    expect(await bring(whole, 'whole')).toBe('imported');
    const { files, index } = opened();
    expect(await bring(await sealed(files, index), 'sealed again')).toBe('imported');
  });
});

test('a word changed in the index, under the old seal, is noticed', async () => {
  const entries = unzipSync(whole) as Files;
  const text = new TextDecoder().decode(entries[INDEX]);
  entries[INDEX] = strToU8(text.replace('Copied 1', 'Copied 7')) as Bytes;
  const opened = await openCopy(new Uint8Array(zipSync(entries, { level: 0 })), { subtle });
  expect(opened).toEqual({ ok: false, fault: { code: 'copy-damaged', where: INDEX } });
});

test('a photograph that tells where it was taken is not brought in', async () => {
  const { files, index } = opened();
  const camera = sharp({ create: { width: 8, height: 6, channels: 3, background: '#864' } });
  const place = { IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } };
  const bytes = new Uint8Array(await camera.withExif(place).jpeg().toBuffer());
  const file = await hex(bytes);
  const [specimen] = index.records.filter(({ kind }: AnyRecord) => kind === 'specimen');
  specimen.body.photo = { file, width: 8, height: 6, size: bytes.length };
  index.files.push({ role: 'photograph', id: file, sha256: file, size: bytes.length });
  files[`photographs/${file}.jpg`] = bytes;
  const opening = await openCopy(await sealed(files, index), { subtle });
  const where = [`photographs/${file}.jpg`];
  expect(opening).toEqual({ ok: false, fault: { code: 'copy-unsound', where } });
});

test('an entry that claims to know all that is here replaces it only until undone', async () => {
  const { index, files } = opened();
  const mine = local[0].find(({ id }) => id === 'local-0001')!;
  const [liar] = index.records.filter(({ kind }: AnyRecord) => kind === 'harmony');
  const clock = '002000000000000.00000';
  index.records.push({
    ...liar,
    id: mine.id,
    clock,
    seen: { ...mine.seen, [liar.device]: [[clock, clock]] },
  });
  const copy = must(await openCopy(await sealed(files, index), { subtle }));
  const imported = must(await importCopy(book, copy));
  expect(imported.changed.map(({ id }) => id)).toEqual([mine.id]);
  must(await imported.undo());
  expect(must(await book.get('harmony', mine.id)).body).toEqual(mine.body);
  expect(must(await book.list()).length).toBe(2);
});

test('a bomb is refused, whatever size it declares, before it is inflated', async () => {
  const zeros = new Uint8Array(32 * 1024 * 1024);
  const seal = { format: 'kingcup-book', version: 1, sha256: 'f'.repeat(64) };
  const entries = { [INDEX]: zeros, [SEAL]: strToU8(JSON.stringify(seal)) };
  const zip = new Uint8Array(zipSync(entries));
  const directory = new DataView(zip.buffer);
  const at = places(zip, 'PK\u0001\u0002')[0]! + 24;
  for (const [declared, code] of [
    [300 * 1024 * 1024, 'copy-too-large'],
    [0xffff_fffe, 'copy-too-large'],
    // The reader stops where the declared size ends.
    [1000, 'copy-damaged'],
  ] as const) {
    directory.setUint32(at, declared, true);
    const opened = await openCopy(zip, { subtle });
    expect(opened).toMatchObject({ ok: false, fault: { code } });
  }
});
