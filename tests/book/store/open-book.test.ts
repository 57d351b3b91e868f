import { beforeEach, describe, expect, test } from 'vitest';
import { gatheringOf, saveGathering, saveSpecimen } from '../../../src/book/store/save-specimen.ts';
import type { SaveState } from '../../../src/book/store/save-state.ts';
import { colour, freshDisk, harmonyBodyOf, must, openMade, picture } from '../made.ts';

beforeEach(() => {
  freshDisk();
});

describe('a specimen', () => {
  test('is kept with nothing but its photograph, and is there after reopening', async () => {
    const book = await openMade();
    const { entry } = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17'));
    book.close();

    const again = await openMade();
    const opened = must(await again.get('specimen', entry.id));
    expect(opened).toEqual(entry);
    const { bytes, type } = must(await again.photograph(opened.body.photo.file));
    expect(type).toBe('image/jpeg');
    expect(bytes).toEqual(picture(1).bytes);
    const [card] = must(await again.list('specimen'));
    expect(must(await again.thumbnail(card!))?.bytes).toEqual(picture(2).bytes);
  });

  test('keeps what was gathered, with its label map', async () => {
    const book = await openMade();
    const { entry } = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17'));
    const gathered = {
      width: 64,
      height: 48,
      colours: [colour('near yellow ochre', [66, 11, 48], 0.8)],
      labels: { width: 3, height: 2, data: new Uint8Array([0, 0, 255, 0, 1, 0]) },
      remarks: ['The photograph is small.'],
    };
    const neutral = { x: 0.25, y: 0.5, radius: 0.02, gains: [1.1, 1, 0.8] } as const;
    const mask = { width: 2, height: 2, data: new Uint8Array([1, 1, 0, 1]) };
    const saved = must(await saveGathering(book, entry, { gathered, neutral, mask }));
    expect(await gatheringOf(book, saved.entry)).toEqual(gathered);
    expect(saved.entry.body.neutral).toEqual(neutral);
    expect(must(await book.list('specimen'))[0]?.words).toContain('near yellow ochre');
  });

  test('whose photograph is missing is refused and leaves nothing', async () => {
    const book = await openMade();
    const { ref } = must(await book.file(picture(1)));
    const body = { name: 'x', note: '', light: '', place: '', walk: '', date: '2031-05-17' };
    const saved = await book.put({ kind: 'specimen', body: { ...body, photo: ref } });
    expect(saved).toMatchObject({ ok: false, fault: { code: 'bad-record' } });
    expect(must(await book.list())).toEqual([]);
  });
});

describe('a harmony', () => {
  test('is saved, listed, opened and renamed', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    const body = { ...entry.body, name: 'Lane, evening' };
    const renamed = must(await book.put({ kind: 'harmony', over: entry, body }));
    expect(renamed.conflictCopyId).toBeNull();
    const cards = must(await book.list('harmony'));
    expect(cards.map(({ name }) => name)).toEqual(['Lane, evening']);
    expect(cards[0]?.pigments).toEqual(['green-earth', 'raw-umber']);
    const opened = must(await book.get('harmony', entry.id));
    expect(opened.body).toEqual(body);
    expect(opened.created).toBe(entry.created);
    expect(opened.changed > entry.changed).toBe(true);

    must(await renamed.undo());
    expect(must(await book.get('harmony', entry.id)).body.name).toBe('Lane');
  });

  test('deleted goes to the bin across a reopening and comes back', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    must(await book.remove(entry.id));
    expect(must(await book.list())).toEqual([]);
    book.close();
    const again = await openMade();
    expect(must(await again.bin()).map(({ id }) => id)).toEqual([entry.id]);
    must(await again.restore(entry.id));
    expect(must(await again.list()).map(({ id }) => id)).toEqual([entry.id]);
    expect(must(await again.get('harmony', entry.id)).body).toEqual(entry.body);
  });

  test('deletion is undone by its own undo', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    const { undo } = must(await book.remove(entry.id));
    must(await undo());
    expect(must(await book.list()).length).toBe(1);
  });
});

test('the line says saving until the entry is on disk, then saved', async () => {
  const book = await openMade();
  const line: SaveState['state'][] = [];
  book.saving.subscribe(({ state }) => line.push(state));
  const saving = book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') });
  expect(line).toEqual(['saved', 'saving']);
  must(await saving);
  expect(line).toEqual(['saved', 'saving', 'saved']);
});
