import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BANDS } from '../../src/colour/grid.ts';
import { stockFaultWords } from '../../src/messages/stock-faults.ts';
import { plainNumber } from '../../src/number-format.ts';
import { changedRecipes } from '../../src/pigment/changed-recipes.ts';
import {
  addEntry,
  duplicateEntry,
  editEntry,
  removeEntry,
  removeOwnPigment,
  type StockResult,
  saveOwnPigment,
} from '../../src/pigment/edit-stock.ts';
import { entryHazardOf } from '../../src/pigment/entry-hazard.ts';
import { findEntries, type StockOrder } from '../../src/pigment/find-entries.ts';
import { markWhite } from '../../src/pigment/mark-white.ts';
import { mixtureShelfOf } from '../../src/pigment/mixing-shelf.ts';
import { pasteOf } from '../../src/pigment/paste.ts';
import { pasteCm3 } from '../../src/pigment/paste-volume.ts';
import { STARTER_SURFACE, starterShelf, starterStock } from '../../src/pigment/starter-shelf.ts';
import {
  draftOf,
  type OwnPigment,
  type Stock,
  type StockEntry,
  type StoredCurve,
} from '../../src/pigment/stock.ts';
import { labelOf } from '../../src/pigment/stock-label.ts';
import { remarkWords } from './remark-words.ts';

const stocked = (result: StockResult): Stock => {
  if (!result.ok)
    throw new Error(result.fault.map((fault) => stockFaultWords(fault, plainNumber)).join(' '));
  return result.value;
};
const codes = (result: StockResult) => {
  if (result.ok) throw new Error('it was accepted');
  for (const fault of result.fault)
    expect(stockFaultWords(fault, plainNumber)).toMatch(/^["A-Z0-9].{15,}\.$/);
  return result.fault.map(({ code }) => code);
};
const EMPTY: Stock = {
  name: 'empty',
  surface: STARTER_SURFACE,
  white: null,
  entries: [],
  own: [],
};
const curve = (K: number, S = 0.2): StoredCurve => ({
  known: 'measured',
  K: Array(BANDS).fill(K),
  S: Array(BANDS).fill(S),
});
const moss: OwnPigment = {
  id: 'own:moss',
  name: 'Moss green',
  synonyms: ['lichen'],
  family: 'green',
  hazard: 'caution',
  caution: 'Let no dust rise.',
  density: 2.5,
  oil: 40,
  curve: curve(0.5),
  note: '',
};

describe('adding, changing, taking off', () => {
  const ochre = stocked(addEntry(EMPTY, { ...draftOf('yellow_ochre'), lot: ' 7 ' }, 'a'));

  test('a draft becomes an entry, its words tidied', () => {
    expect(ochre.entries[0]).toMatchObject({ id: 'a', pigment: 'yellow_ochre', lot: '7' });
    expect(EMPTY.entries).toEqual([]);
    expect(labelOf(ochre, ochre.entries[0]!)).toBe('Yellow ochre, lot 7');
  });
  test('an edit keeps its place and everything it does not name', () => {
    const two = stocked(addEntry(ochre, draftOf('indigo'), 'b'));
    const edited = stocked(editEntry(two, 'a', { amount: 37, grade: 'fine' }));
    expect(edited.entries.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(edited.entries[0]).toMatchObject({ lot: '7', amount: 37, grade: 'fine' });
    expect(two.entries[0]!.amount).toBeNull();
  });
  test('another form brings its unit, and forgets an amount in the old one', () => {
    const weighed = stocked(editEntry(ochre, 'a', { amount: 37 }));
    expect(stocked(editEntry(weighed, 'a', { form: 'powder' })).entries[0]).toMatchObject({
      unit: 'g',
      amount: null,
    });
    expect(stocked(editEntry(weighed, 'a', { form: 'paste' })).entries[0]).toMatchObject({
      unit: 'ml',
      amount: 37,
    });
  });
  test('a copy is the next lot that is free', () => {
    const copied = stocked(duplicateEntry(ochre, 'a', 'b'));
    expect(copied.entries.map(({ lot }) => lot)).toEqual(['7', '8']);
    const again = stocked(duplicateEntry(copied, 'a', 'c'));
    expect(again.entries.map(({ lot }) => lot)).toEqual(['7', '9', '8']);
    const unnamed = stocked(addEntry(EMPTY, draftOf('indigo'), 'a'));
    expect(stocked(duplicateEntry(unnamed, 'a', 'b')).entries[1]!.lot).toBe('2');
  });
  test("a copy does not take its lot's curve along", () => {
    const own = stocked(editEntry(ochre, 'a', { curve: curve(1) }));
    expect(stocked(duplicateEntry(own, 'a', 'b')).entries[1]!.curve).toBeNull();
  });
  test('what was taken off elsewhere cannot be changed', () => {
    const none = stocked(removeEntry(ochre, 'a'));
    expect(none.entries).toEqual([]);
    for (const result of [
      removeEntry(none, 'a'),
      editEntry(none, 'a', {}),
      duplicateEntry(none, 'a', 'b'),
    ])
      expect(codes(result)).toEqual(['stock-gone']);
  });
  test('taking off the white leaves none', () => {
    const stock = starterStock();
    expect(stocked(removeEntry(stock, 'lead_white')).white).toBeNull();
    expect(stocked(removeEntry(stock, 'indigo')).white).toBe('lead_white');
  });
  test('an id twice is a mistake of the program', () => {
    expect(() => addEntry(ochre, draftOf('indigo'), 'a')).toThrow(RangeError);
  });
});

describe('what is wrong is said all at once, each with its field', () => {
  const faulty = addEntry(
    EMPTY,
    {
      ...draftOf('moss', 'powder'),
      unit: 'ml',
      amount: -3,
      density: 80,
      oil: 0,
      grade: 'x'.repeat(99),
    },
    'a',
  );
  test('six faults', () => {
    expect(codes(faulty)).toEqual([
      'stock-pigment-unknown',
      'stock-amount',
      'stock-unit',
      'stock-density',
      'stock-oil',
      'stock-long',
    ]);
    expect(faulty).toMatchObject({
      fault: ['pigment', 'amount', 'unit', 'density', 'oil', 'grade'].map((field) => ({ field })),
    });
  });
  test.each<[Partial<StockEntry>, string]>([
    [{ pigment: '' }, 'stock-pigment-missing'],
    [{ amount: Number.NaN }, 'stock-amount'],
    [{ amount: Number.POSITIVE_INFINITY }, 'stock-amount'],
    [{ curve: { known: 'measured', K: [1], S: [1] } }, 'stock-curve'],
    [{ curve: curve(-1) }, 'stock-curve'],
    [{ curve: curve(1, 0) }, 'stock-curve'],
    [{ oil: Number.NaN }, 'stock-oil'],
  ])('%j', (change, code) => {
    expect(codes(addEntry(EMPTY, { ...draftOf('indigo'), ...change }, 'a'))).toEqual([code]);
  });
  test('the same pigment, grade, lot and form twice', () => {
    const stock = stocked(addEntry(EMPTY, { ...draftOf('indigo'), lot: '3' }, 'a'));
    expect(codes(addEntry(stock, { ...draftOf('indigo'), lot: '3' }, 'b'))).toEqual([
      'stock-twice',
    ]);
    expect(addEntry(stock, { ...draftOf('indigo', 'powder'), lot: '3' }, 'b').ok).toBe(true);
  });
});

describe('a pigment of one of its own', () => {
  const stock = stocked(saveOwnPigment(EMPTY, moss));
  test('can stand on the shelf and be mixed', () => {
    const one = stocked(addEntry(stock, draftOf('own:moss'), 'a'));
    expect(labelOf(one, one.entries[0]!)).toBe('Moss green');
    expect(mixtureShelfOf(one).paints[0]).toMatchObject({
      pigment: 'own:moss',
      label: 'Moss green',
    });
    expect(codes(removeOwnPigment(one, 'own:moss'))).toEqual(['own-in-use']);
    expect(stocked(removeOwnPigment(stocked(removeEntry(one, 'a')), 'own:moss')).own).toEqual([]);
  });
  test('without a curve it waits, and a remark says so', () => {
    const bare = stocked(saveOwnPigment(EMPTY, { ...moss, curve: null }));
    const shelf = mixtureShelfOf(stocked(addEntry(bare, draftOf('own:moss'), 'a')));
    expect(shelf.paints).toEqual([]);
    expect(remarkWords(shelf.remarks)[0]).toBe(
      'Moss green has no K and S yet, so nothing is mixed with it.',
    );
  });
  test('needs a name that no other has', () => {
    expect(codes(saveOwnPigment(stock, { ...moss, id: 'own:b', name: ' moss GREEN ' }))).toEqual([
      'own-name-taken',
    ]);
    expect(codes(saveOwnPigment(stock, { ...moss, name: '  ' }))).toEqual(['own-name-missing']);
    expect(
      stocked(saveOwnPigment(stock, { ...moss, note: 'from the north wall' })).own,
    ).toHaveLength(1);
  });
});

describe('the shelf that is mixed on', () => {
  test('the starter stock is the starter shelf', () => {
    expect(mixtureShelfOf(starterStock())).toEqual(starterShelf());
  });
  const two = stocked(
    addEntry(
      stocked(addEntry(EMPTY, { ...draftOf('yellow_ochre'), lot: '1' }, 'a')),
      { ...draftOf('yellow_ochre'), lot: '2' },
      'b',
    ),
  );
  test('lots that look alike are one paint', () => {
    expect(mixtureShelfOf(two).paints.map(({ pigment }) => pigment)).toEqual(['yellow_ochre']);
  });
  test('a calibrated lot beside others is a paint of its own', () => {
    const own = stocked(editEntry(two, 'b', { curve: curve(1) }));
    expect(mixtureShelfOf(own).paints.map(({ pigment, label }) => [pigment, label])).toEqual([
      ['yellow_ochre', 'Yellow ochre'],
      ['yellow_ochre#b', 'Yellow ochre, lot 2'],
    ]);
  });
  test('a calibrated lot alone goes by its pigment, so that recipes find it', () => {
    const own = stocked(editEntry(stocked(removeEntry(two, 'a')), 'b', { curve: curve(1) }));
    const [paint] = mixtureShelfOf(own).paints;
    expect(paint!.pigment).toBe('yellow_ochre');
    expect(paint!.paint.K[0]).toBe(1);
  });
  test('what is used up is left out', () => {
    const used = stocked(editEntry(starterStock(), 'indigo', { amount: 0 }));
    const shelf = mixtureShelfOf(used);
    expect(shelf.paints.some(({ pigment }) => pigment === 'indigo')).toBe(false);
    expect(remarkWords(shelf.remarks)).toContain('Indigo is used up.');
  });
  test('an empty stock', () => {
    expect(mixtureShelfOf(EMPTY)).toMatchObject({ paints: [], white: null });
  });
});

describe("the studio's white", () => {
  test('is marked, and may be a bought stand-in', () => {
    const stock = stocked(addEntry(starterStock(), draftOf('titanium_white'), 't'));
    const marked = stocked(markWhite(stock, 't'));
    expect(mixtureShelfOf(marked).white).toBe('titanium_white');
    expect(mixtureShelfOf(stocked(markWhite(stock, null))).white).toBeNull();
  });
  test('is not a red earth, nor chalk, nor something without a curve', () => {
    const stock = starterStock();
    expect(codes(markWhite(stock, 'red_earth'))).toEqual(['stock-white-dark']);
    const chalk = stocked(addEntry(stock, draftOf('chalk'), 'c'));
    expect(codes(markWhite(chalk, 'c'))).toEqual(['stock-white-dark']);
    const bare = stocked(saveOwnPigment(stock, { ...moss, curve: null }));
    expect(codes(markWhite(stocked(addEntry(bare, draftOf('own:moss'), 'm')), 'm'))).toEqual([
      'stock-white-uncurved',
    ]);
    expect(codes(markWhite(stock, 'nothing'))).toEqual(['stock-gone']);
  });
  test('that is used up is said', () => {
    const shelf = mixtureShelfOf(stocked(editEntry(starterStock(), 'lead_white', { amount: 0 })));
    expect(shelf.white).toBeNull();
    expect(remarkWords(shelf.remarks).join(' ')).toContain('mark another');
  });
});

describe('how much it is', () => {
  const of = (draft: Partial<StockEntry>) => {
    const stock = stocked(addEntry(EMPTY, { ...draftOf('lead_white'), ...draft }, 'a'));
    return pasteCm3(stock, stock.entries[0]!);
  };
  // Paste of lead white: 3.910 g/cm3, 88.5 g of pigment in 100 g (handbook sheet).
  test('tubes by volume, paste by weight, powder as it would be ground', () => {
    expect(of({ amount: 40 })).toBe(40);
    expect(of({ form: 'paste', unit: 'g', amount: 391 })).toBeCloseTo(100, 1);
    expect(of({ form: 'powder', unit: 'g', amount: 88.5 })).toBeCloseTo(25.58, 1);
  });
  test("the lot's own figures come first", () => {
    const own = of({ form: 'paste', unit: 'g', amount: 100, density: 6, oil: 15 });
    expect(own).toBeCloseTo(100 / pasteOf({ density: 6, oil: 15 }).density, 9);
  });
  test('nobody weighed it, or nobody knows', () => {
    expect(of({})).toBeNull();
    const bare = stocked(saveOwnPigment(EMPTY, { ...moss, oil: null }));
    const draft = { ...draftOf('own:moss', 'powder'), amount: 5 };
    const stock = stocked(addEntry(bare, draft, 'a'));
    expect(pasteCm3(stock, stock.entries[0]!)).toBeNull();
  });
});

describe('search and order', () => {
  const stock = stocked(
    addEntry(
      starterStock(),
      { ...draftOf('ultramarine', 'powder'), grade: 'ash', lot: 'Éte 12' },
      'u2',
    ),
  );
  const found = (query: string, order?: StockOrder) =>
    findEntries(stock, query, order).map(({ id }) => id);
  test('by name, other names, colour-index name, family, grade and lot, without accents', () => {
    expect(found('umber')).toEqual(['burnt_umber', 'raw_umber']);
    expect(found('VINE black')).toEqual(['charcoal_black']);
    expect(found('pb30')).toEqual(['azurite']);
    // The pigment is called lapis and ultramarine ash; this lot has the grade as well.
    expect(found('lapis ash')).toEqual(['ultramarine', 'u2']);
    expect(found('ete')).toEqual(['u2']);
    expect(found('no such thing')).toEqual([]);
    expect(found('')).toHaveLength(17);
  });
  test('by family from white to black, by name, by hazard', () => {
    expect(found('')[0]).toBe('lead_white');
    expect(found('').at(-1)).toBe('charcoal_black');
    expect(found('', 'name')[0]).toBe('azurite');
    expect(found('', 'hazard').slice(0, 3)).toEqual(['lead_white', 'lead_tin_yellow', 'vermilion']);
  });
  test('by amount: what runs out first, and last what nobody weighed', () => {
    const weighed = stocked(
      editEntry(stocked(editEntry(stock, 'indigo', { amount: 12 })), 'azurite', { amount: 5 }),
    );
    expect(
      findEntries(weighed, '', 'amount')
        .slice(0, 2)
        .map(({ id }) => id),
    ).toEqual(['azurite', 'indigo']);
  });
});

describe('cautions', () => {
  test('dry powder of lead or mercury is refused, paste is not', () => {
    for (const [pigment, refused] of [
      ['lead_white', true],
      ['vermilion', true],
      ['orpiment', true],
      ['azurite', false],
    ] as const) {
      const stock = stocked(addEntry(EMPTY, draftOf(pigment, 'powder'), 'a'));
      expect(entryHazardOf(stock, stock.entries[0]!).dryRefused).toBe(refused);
      const tube = stocked(addEntry(EMPTY, draftOf(pigment), 'a'));
      expect(entryHazardOf(tube, tube.entries[0]!).dryRefused).toBe(false);
    }
  });
  test("of one's own pigment the painter's words", () => {
    const stock = stocked(addEntry(stocked(saveOwnPigment(EMPTY, moss)), draftOf('own:moss'), 'a'));
    expect(entryHazardOf(stock, stock.entries[0]!)).toMatchObject({
      level: 'caution',
      caution: 'Let no dust rise.',
    });
  });
});

describe('recipes that a new lot moves', () => {
  const stock = starterStock();
  const stronger = stocked(editEntry(stock, 'yellow_ochre', { curve: curve(1.5, 0.1) }));
  const recipe = (id: string, parts: Record<string, number>) => ({
    id,
    parts: Object.entries(parts).map(([pigment, count]) => ({ pigment, parts: count })),
  });
  const book = [
    recipe('grey', { lead_white: 8, charcoal_black: 1 }),
    recipe('sand', { lead_white: 8, yellow_ochre: 1 }),
    recipe('trace', { lead_white: 100_000, yellow_ochre: 1 }),
    recipe('mud', { yellow_ochre: 4, raw_umber: 1 }),
    recipe('foreign', { moss: 1 }),
  ];
  test('only those are named that move by more than 1, most moved first', () => {
    const { moved, lost } = changedRecipes(book, mixtureShelfOf(stock), mixtureShelfOf(stronger));
    expect(moved.map(({ id }) => id).toSorted()).toEqual(['mud', 'sand']);
    expect(moved[0]!.deltaE00).toBeGreaterThan(moved[1]!.deltaE00);
    expect(lost).toEqual([]);
  });
  test('nothing moves when nothing changed', () => {
    const shelf = mixtureShelfOf(stock);
    expect(changedRecipes(book, shelf, mixtureShelfOf(starterStock())).moved).toEqual([]);
  });
  test('what cannot be mixed any more is named apart', () => {
    const without = stocked(removeEntry(stock, 'yellow_ochre'));
    const { lost } = changedRecipes(book, mixtureShelfOf(stock), mixtureShelfOf(without));
    expect(lost).toEqual(['sand', 'trace', 'mud']);
  });
});

test('any sequence of edits keeps a stock that is sound', () => {
  const pigment = fc.constantFrom('indigo', 'azurite', 'lead_white', 'moss');
  const step = fc.oneof(
    fc.record({ kind: fc.constant('add'), pigment, lot: fc.string({ maxLength: 3 }) }),
    fc.record({ kind: fc.constant('remove'), at: fc.nat(5) }),
    fc.record({ kind: fc.constant('copy'), at: fc.nat(5) }),
    fc.record({ kind: fc.constant('white'), at: fc.nat(2) }),
  );
  const counted = { done: 0, refused: 0, filled: 0, whites: 0 };
  fc.assert(
    fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
      let stock = EMPTY;
      steps.forEach((each, i) => {
        const at = stock.entries['at' in each ? each.at : 0]?.id ?? 'none';
        const result =
          'pigment' in each
            ? addEntry(stock, { ...draftOf(each.pigment), lot: each.lot }, `e${i}`)
            : each.kind === 'remove'
              ? removeEntry(stock, at)
              : each.kind === 'copy'
                ? duplicateEntry(stock, at, `e${i}`)
                : markWhite(stock, at);
        counted[result.ok ? 'done' : 'refused']++;
        if (result.ok) stock = result.value;
      });
      counted.filled += Number(stock.entries.length > 1);
      counted.whites += Number(stock.white !== null);
      const keys = stock.entries.map(({ pigment: of, grade, lot, form }) =>
        [of, grade, lot, form].join('|'),
      );
      expect(new Set(keys).size).toBe(keys.length);
      expect(stock.white === null || stock.entries.some(({ id }) => id === stock.white)).toBe(true);
      const { paints, white } = mixtureShelfOf(stock);
      expect(new Set(paints.map((paint) => paint.pigment)).size).toBe(paints.length);
      expect(white === null || paints.some((paint) => paint.pigment === white)).toBe(true);
    }),
    { numRuns: 100, seed: 3 },
  );
  for (const [what, times] of Object.entries(counted)) expect(times, what).toBeGreaterThan(3);
});
