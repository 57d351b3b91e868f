import { beforeEach, expect, test } from 'vitest';
import { bodyOfStock } from '../../../src/book/schema/shelf.ts';
import { addEntry, saveOwnPigment } from '../../../src/pigment/edit-stock.ts';
import { markWhite } from '../../../src/pigment/mark-white.ts';
import { mixtureShelfOf } from '../../../src/pigment/mixing-shelf.ts';
import { starterStock } from '../../../src/pigment/starter-shelf.ts';
import { draftOf, type Stock } from '../../../src/pigment/stock.ts';
import { paintsOf } from '../kinds.ts';
import { freshDisk, must, openMade } from '../made.ts';

beforeEach(() => {
  freshDisk();
});

const flat = (value: number) => Array.from({ length: 36 }, () => value);

/** A starter shelf with what else a painter has: a second lot, one used up, a pigment of one's own. */
function stocked(): Stock {
  const curve = { known: 'measured', K: flat(0.4), S: flat(0.2) } as const;
  const own = {
    id: 'own:meadow',
    name: 'Meadow green',
    synonyms: [],
    family: 'green',
    hazard: 'caution',
    caution: 'Dust.',
    density: 3,
    oil: 40,
    curve: { ...curve, known: 'photographed' },
    note: '',
  } as const;
  let stock = must(saveOwnPigment(starterStock(), own));
  const more: [string, ReturnType<typeof draftOf>][] = [
    ['ochre-2', { ...draftOf('yellow_ochre', 'powder'), lot: '2', amount: 120, curve }],
    ['smalt-0', { ...draftOf('smalt'), amount: 0 }],
    ['saffron-1', { ...draftOf('saffron', 'powder'), note: 'from the market' }],
    ['meadow-1', { ...draftOf('own:meadow', 'paste'), amount: 35.5, grade: 'fine' }],
  ];
  for (const [id, draft] of more) stock = must(addEntry(stock, draft, id));
  return must(markWhite(stock, 'lead_white'));
}

test('a stocked shelf comes back from the book as it was, amounts, lots, curves and all', async () => {
  const book = await openMade();
  const stock = stocked();
  must(
    await book.put({
      kind: 'shelf',
      id: 'studio-shelf',
      body: bodyOfStock(stock, ({ code }) => code),
    }),
  );
  const { body } = must(await book.get('shelf', 'studio-shelf'));
  expect(body.stock).toEqual(stock);
  const { name, basis, surface, white, paints, remarks } = mixtureShelfOf(stock);
  expect(body).toMatchObject({ name, basis, surface, white });
  expect(paintsOf(body)).toEqual(paints);
  expect(body.remarks).toEqual(remarks.map(({ code }) => code));
  const known = new Map(body.paints.map((paint) => [paint.pigment, paint]));
  expect(known.get('yellow_ochre')).toMatchObject({ known: 'handbook', lot: '', form: 'paste' });
  expect(known.get('yellow_ochre#ochre-2')).toMatchObject({
    ...{ known: 'measured', lot: '2', form: 'powder' },
  });
  expect(known.get('own:meadow')).toMatchObject({ known: 'photographed', grade: 'fine' });
  expect(known.has('smalt')).toBe(false);
});

test('what cannot be mixed is found in the book all the same', async () => {
  const book = await openMade();
  must(
    await book.put({
      kind: 'shelf',
      id: 'studio-shelf',
      body: bodyOfStock(stocked(), ({ code }) => code),
    }),
  );
  const [card] = must(await book.list('shelf'));
  for (const word of ['smalt', 'saffron', 'from the market', 'meadow green'])
    expect(card!.words).toContain(word);
});

test('an empty shelf is kept too', async () => {
  const book = await openMade();
  const stock: Stock = { ...starterStock(), white: null, entries: [] };
  const put = await book.put({
    kind: 'shelf',
    id: 'studio-shelf',
    body: bodyOfStock(stock, ({ code }) => code),
  });
  expect(must(put).entry.body.stock).toEqual(stock);
});
