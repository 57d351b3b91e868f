import { describe, expect, test } from 'vitest';
import type { EntrySummary } from '../../src/book/schema/entry-summary.ts';
import { bodyOfStock } from '../../src/book/schema/shelf.ts';
import type { Book } from '../../src/book/store/open-book.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { recipeColourOf } from '../../src/pigment/changed-recipes.ts';
import { addEntry, setSpecular } from '../../src/pigment/edit-stock.ts';
import { writeShelfCsv, writeShelfJson } from '../../src/pigment/import/shelf-json.ts';
import { masstone } from '../../src/pigment/masstone.ts';
import { STARTER_SURFACE, starterShelf, starterStock } from '../../src/pigment/starter-shelf.ts';
import { draftOf } from '../../src/pigment/stock.ts';
import { ok } from '../../src/result.ts';
import { readCurves } from '../../src/ui/features/shelf/curve-file.ts';
import { strokesOf } from '../../src/ui/features/shelf/paint-strokes.ts';
import { movedBy, recipesWith } from '../../src/ui/features/shelf/recipes-in-book.ts';
import { shelfLines } from '../../src/ui/features/shelf/shelf-search.ts';
import { EMPTY, isStarter, mixingShelfOf } from '../../src/ui/state/studio-shelf.ts';

function must<T>(result: { ok: true; value: T } | { ok: false; fault: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
}

describe('what mixtures are sought on', () => {
  test('the starter shelf while nothing is stocked, or nothing of it can be mixed', () => {
    expect(isStarter(mixingShelfOf(null))).toBe(true);
    expect(isStarter(mixingShelfOf(EMPTY))).toBe(true);
    const usedUp = must(addEntry(EMPTY, { ...draftOf('smalt'), amount: 0 }, 'one'));
    expect(isStarter(mixingShelfOf(usedUp))).toBe(true);
    const uncurved = must(addEntry(EMPTY, draftOf('saffron', 'powder'), 'one'));
    expect(isStarter(mixingShelfOf(uncurved))).toBe(true);
  });

  test('the studio’s own as soon as one paint can be mixed, and nothing beside it', () => {
    const stock = must(addEntry(EMPTY, draftOf('smalt'), 'one'));
    expect(mixingShelfOf(stock).paints.map(({ pigment }) => pigment)).toEqual(['smalt']);
  });
});

describe('paint with its gloss, or varnished and seen without glare', () => {
  const varnished = setSpecular(EMPTY, 'excluded');

  test('the choice holds before anything is stocked, and is the same starter shelf each time', () => {
    expect(isStarter(mixingShelfOf(varnished))).toBe(true);
    expect(mixingShelfOf(varnished)).toBe(mixingShelfOf(varnished));
    expect(mixingShelfOf(varnished).surface).toEqual({ ...STARTER_SURFACE, specular: 'excluded' });
    expect(EMPTY.surface.specular).toBe('included');
  });

  // Saunderson (1942): what the surface mirrors, k1 = 0.03, is added to every band; left out, a black
  // that measured Y = 3 and some measures what its body sends back alone.
  test('darks are deeper and no paint is lighter without it, by k1 in every band', () => {
    const glossy = mixingShelfOf(EMPTY);
    const clear = mixingShelfOf(varnished);
    expect(clear.paints).toHaveLength(starterShelf().paints.length);
    expect(glossy.paints).toHaveLength(clear.paints.length);
    for (const [at, { paint }] of glossy.paints.entries()) {
      const [L] = masstone(paint, glossy.surface);
      const [deeper] = masstone(clear.paints[at]!.paint, clear.surface);
      expect(deeper).toBeLessThan(L);
    }
    const blackest = (shelf: typeof glossy) =>
      Math.min(...shelf.paints.map(({ paint }) => masstone(paint, shelf.surface)[0]));
    expect(blackest(glossy)).toBeGreaterThan(20);
    expect(blackest(clear)).toBeLessThan(12);
  });

  test('what is stocked then keeps it', () => {
    const stock = must(addEntry(varnished, draftOf('smalt'), 'one'));
    expect(mixingShelfOf(stock).surface.specular).toBe('excluded');
    expect(bodyOfStock(stock, ({ code }) => code).stock?.surface.specular).toBe('excluded');
  });
});

describe('the list', () => {
  test('from light to dark, what has no colour last', () => {
    const stock = must(addEntry(starterStock(), draftOf('saffron', 'powder'), 'saffron-1'));
    const lines = shelfLines(stock, '', 'light');
    expect(lines[0]!.name).toBe('Lead white');
    expect(lines.at(-1)!.lab).toBeNull();
    const lightness = lines.flatMap(({ lab }) => (lab ? [lab[0]] : []));
    expect(lightness).toEqual(lightness.toSorted((p, q) => q - p));
  });

  test('a search keeps the order', () => {
    const names = shelfLines(starterStock(), 'earth', 'name').map(({ name }) => name);
    expect(names).toEqual(names.toSorted());
    expect(names).toContain('Green earth');
  });

  test('is brushed out in masstone and tints, each lighter than the one before; white in masstone', () => {
    const stock = starterStock();
    const strokes = strokesOf(stock, builtInPaintOf('ultramarine'), [2, 10]);
    const light = strokes.map(({ hex }) => Number.parseInt(hex.slice(3, 5), 16));
    expect(strokes).toHaveLength(3);
    expect(light).toEqual(light.toSorted((p, q) => p - q));
    expect(strokesOf(stock, builtInPaintOf('lead_white'), [2, 10])).toHaveLength(1);
    expect(strokesOf(stock, null, [2])).toEqual([]);
  });
});

describe('curves of a file', () => {
  const shelf = starterShelf();
  test.each([
    ['JSON', writeShelfJson(shelf)],
    ['CSV', writeShelfCsv(shelf)],
  ])('every paint of a shelf in %s is offered', async (kind, text) => {
    const file = new File([text], `shelf.${kind.toLowerCase()}`);
    const read = must(await readCurves(file, STARTER_SURFACE, 0.2));
    expect(read.isSpectra).toBe(false);
    expect(read.remarks).toEqual([]);
    expect(read.offered).toHaveLength(shelf.paints.length);
    const first = masstone(shelf.paints[0]!.paint, STARTER_SURFACE);
    expect(deltaE00(masstone(read.offered[0]!.paint, STARTER_SURFACE), first)).toBeLessThan(1e-3);
  });

  test('a measured spectrum of a masstone looks as it was measured', async () => {
    const paint = builtInPaintOf('red_earth')!;
    const R: Reflectance = addSurface(opaque([1], [paint], spectrum()), STARTER_SURFACE);
    const fields = Array.from(R, (_, band) => `SPECTRAL_NM${380 + 10 * band}`);
    const text = [
      'CGATS.17',
      ...['BEGIN_DATA_FORMAT', `SAMPLE_NAME ${fields.join(' ')}`, 'END_DATA_FORMAT'],
      ...['BEGIN_DATA', `"Red, lot 4" ${Array.from(R).join(' ')}`, 'END_DATA'],
    ].join('\n');
    const read = must(await readCurves(new File([text], 'red.txt'), STARTER_SURFACE, 0.2));
    expect(read.isSpectra).toBe(true);
    expect(read.offered[0]!.name).toBe('Red, lot 4');
    const lab = masstone(read.offered[0]!.paint, STARTER_SURFACE);
    expect(deltaE00(lab, masstone(paint, STARTER_SURFACE))).toBeLessThan(0.01);
  });

  test.each([
    ['a poem', 'Roses are red', /not a shelf/],
    ['nothing', '', /no paint/],
    [
      'spectra cut short',
      'CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID SPECTRAL_NM400',
      /no data in the form of CGATS/,
    ],
    ['more than any shelf', 'x'.repeat(5_000_001), /larger/],
  ])('%s is refused in a sentence', async (_, text, sentence) => {
    const read = await readCurves(new File([text], 'odd.csv'), STARTER_SURFACE, 0.2);
    expect(read).toEqual({ ok: false, fault: expect.stringMatching(sentence) });
    expect(read).toEqual({ ok: false, fault: expect.stringMatching(/\.$/) });
  });
});

describe('recipes that move when a lot is replaced', () => {
  const shelf = starterShelf();
  const parts = (of: Record<string, number>) =>
    Object.entries(of).map(([pigment, n]) => ({ pigment, parts: n }));
  const mixture = (of: Record<string, number>) => {
    const recipe = parts(of);
    const lab = recipeColourOf({ id: '', parts: recipe }, shelf)!;
    const plain = { lab, deltaE00: 0, reachable: true, partsLab: lab, partsDeltaE00: 0 };
    return { ...plain, recipe: [], parts: recipe };
  };
  const flesh = mixture({ lead_white: 4, red_earth: 1 });
  const sky = mixture({ lead_white: 3, azurite: 2 });
  const faint = mixture({ lead_white: 200, red_earth: 1 });
  const cards = [
    { id: 'harmony-1', kind: 'harmony', name: 'Jay', pigments: ['lead_white', 'red_earth'] },
    { id: 'formula-1', kind: 'formula', name: 'Skies', pigments: ['lead_white', 'azurite'] },
    { id: 'gone-1', kind: 'palette', name: 'Gone', pigments: ['red_earth'] },
  ] as unknown as EntrySummary[];
  const bodies: Record<string, unknown> = {
    'harmony-1': {
      colours: [
        { name: 'flesh', mixture: flesh },
        { name: 'faint', mixture: faint },
        { name: 'not mixed' },
      ],
    },
    'formula-1': { passages: [{ name: 'sky', layers: [{ film: 'body', mixture: sky }] }] },
  };
  const book = {
    list: async () => ok(cards),
    get: async (_: string, id: string) =>
      bodies[id] ? ok({ body: bodies[id] }) : { ok: false, fault: { code: 'damaged' } },
  } as unknown as Book;

  test('those that use it are found wherever the book keeps them; what cannot be read is passed over', async () => {
    const white = must(await recipesWith(book, 'lead_white'));
    expect(white.map(({ name, entry }) => `${name} of ${entry}`)).toEqual([
      ...['flesh of Jay', 'faint of Jay', 'sky, body of Skies'],
    ]);
    expect(white.map(({ harmony }) => harmony)).toEqual(['harmony-1', 'harmony-1', null]);
    expect(must(await recipesWith(book, 'red_earth'))).toHaveLength(2);
    expect(must(await recipesWith(book, 'smalt'))).toEqual([]);
    expect(must(await recipesWith(book, null)).length).toBeGreaterThanOrEqual(white.length);
    expect(must(await recipesWith(book, null)).map(({ name }) => name)).toEqual(
      expect.arrayContaining(white.map(({ name }) => name)),
    );
  });

  test('the same lot again moves none; another moves those of which it is a good part, most moved first', async () => {
    const recipes = must(await recipesWith(book, 'red_earth'));
    expect(movedBy(recipes, shelf, 'red_earth', builtInPaintOf('red_earth')!)).toEqual([]);
    const moved = movedBy(recipes, shelf, 'red_earth', builtInPaintOf('burnt_sienna')!);
    for (const { deltaE00: difference, before, after } of moved) {
      expect(difference).toBeGreaterThan(1);
      expect(deltaE00(before, after)).toBeCloseTo(difference, 9);
    }
    // The sky holds none of it.
    expect(moved.map(({ recipe }) => recipe.name)).toEqual(['flesh', 'faint']);
    expect(moved[0]!.deltaE00).toBeGreaterThan(moved[1]!.deltaE00);
  });
});
