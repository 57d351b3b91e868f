import { beforeEach, expect, test } from 'vitest';
import type { Book } from '../../../src/book/store/open-book.ts';
import { importCopy, makeCopy } from '../../../src/book/transfer/copies.ts';
import { openCopy } from '../../../src/book/transfer/unpack.ts';
import { bodies } from '../kinds.ts';
import { freshDisk, must, NOON, openMade, picture } from '../made.ts';

beforeEach(() => {
  freshDisk();
});

/** A card with its photograph, a file of curves and a logged pile. */
async function taught(): Promise<Book> {
  const book = await openMade();
  const photo = must(await book.file(picture(3)));
  const { reading } = bodies.card;
  const card = { ...bodies.card, reading: { ...reading!, photo: photo.ref } };
  const thumbnail = { of: photo.ref.file, bytes: picture(4).bytes, type: 'image/jpeg' };
  must(await book.put({ kind: 'card', id: 'card-0001', body: card, files: [photo], thumbnail }));
  must(await book.put({ kind: 'curves', id: 'curves-0001', body: bodies.curves }));
  must(await book.put({ kind: 'pile', id: 'pile-0001', body: bodies.pile }));
  return book;
}

async function copied(book: Book) {
  const { pieces } = must(await makeCopy(book, { nowMs: NOON }));
  const bytes = new Uint8Array(await new Blob([...pieces]).arrayBuffer());
  return must(await openCopy(bytes, { subtle: crypto.subtle }));
}

test('cards with their photographs, curves and piles travel in a copy', async () => {
  const book = await taught();
  const copy = await copied(book);
  const card = must(await book.get('card', 'card-0001'));
  book.close();
  freshDisk();
  const other = await openMade();
  must(await importCopy(other, copy));
  expect(must(await other.get('card', 'card-0001'))).toEqual(card);
  const { photo } = card.body.reading!;
  expect(must(await other.photograph(photo!.file)).bytes.byteLength).toBe(photo!.size);
  expect(must(await other.get('curves', 'curves-0001')).body).toEqual(bodies.curves);
  expect(must(await other.get('pile', 'pile-0001')).body).toEqual(bodies.pile);
  const [listed] = must(await other.list('card'));
  expect(must(await other.thumbnail(listed!))?.type).toBe('image/jpeg');
});

test('a photograph read on one device and a place left out on another become one card', async () => {
  const { reading, ...waiting } = bodies.card;
  const here = await openMade();
  must(await here.put({ kind: 'card', id: 'card-0001', body: { ...waiting, leftOut: [] } }));
  const over = must(await here.get('card', 'card-0001'));
  const { photo: _, ...seen } = reading!;
  // Another window left a place out meanwhile; this one still shows the card as it was.
  must(
    await here.put({ kind: 'card', id: 'card-0001', over, body: { ...over.body, leftOut: [4] } }),
  );
  must(
    await here.put({ kind: 'card', id: 'card-0001', over, body: { ...over.body, reading: seen } }),
  );
  expect(must(await here.get('card', 'card-0001')).body).toMatchObject({
    leftOut: [4],
    reading: { places: [{ number: 4 }] },
  });
});
