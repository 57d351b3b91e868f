import { is } from 'valibot';
import { describe, expect, test } from 'vitest';
import { type DraperyBody, draperyBody, type FormulaBody } from '../../src/book/schema/drapery.ts';
import type { Lab } from '../../src/colour/lab.ts';
import type { Cloth, GarmentRequest } from '../../src/drapery/cloth-types.ts';
import { formulaOf } from '../../src/drapery/formula.ts';
import { drape } from '../../src/drapery/garment.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { schemeFromFormula } from '../../src/ui/features/drapery/scheme-from-formula.ts';
import {
  hasAllRequests,
  recordsOf,
  schemeFromRecord,
} from '../../src/ui/state/drapery/drapery-records.ts';
import type { SchemeGarment } from '../../src/ui/state/drapery/drapery-scheme.ts';

const shelf = starterShelf();
const draped = (wish: GarmentRequest) => {
  const made = drape(wish, shelf);
  if (!made.ok) throw new Error(JSON.stringify(made.fault));
  return made.value;
};
const cloak: SchemeGarment = {
  wish: {
    ...{ name: 'cloak', lab: [45, 30, 18] as Lab, way: 'deepened in its own hue', stuff: 'wool' },
    ...{ even: true, neighbour: [60, -5, -10] as Lab, insistBlack: false },
    trim: { name: 'edge', lab: [70, 3, 40], way: 'deepened in its own hue', stuff: 'satin' },
  },
  share: 0.7,
};
const sleeve: SchemeGarment = {
  wish: {
    ...{ name: 'sleeve', lab: [40, 44, 20] as Lab, way: 'underpaint and glaze', stuff: 'satin' },
    glaze: 'madder_lake',
  },
  share: 0.3,
};
const garments = [cloak, sleeve].map(({ wish }) => draped(wish));
const body: DraperyBody = {
  ...{ name: 'Shepherd', note: '', date: '2031-05-17', harmony: null },
  garments: [cloak, sleeve].flatMap((worn, i) => recordsOf(garments[i]!, worn)),
};

describe('a drapery in the book', () => {
  test('comes back with all that was wished, and with its shares', () => {
    expect(is(draperyBody, JSON.parse(JSON.stringify(body)))).toBe(true);
    expect(hasAllRequests(body)).toBe(true);
    const back = schemeFromRecord(JSON.parse(JSON.stringify(body)));
    // A trim's own name is not kept: it is called by its part.
    const { trim, ...wish } = cloak.wish;
    const { name: _, ...edge } = trim!;
    expect(back.garments[0]).toMatchObject({ share: 0.7, wish: { ...wish, trim: edge } });
    expect(back.garments[1]).toEqual(sleeve);
  });

  test('of an older book is guessed from its ladders', () => {
    const old = { ...body, garments: body.garments.map(({ wish: _w, share: _s, ...one }) => one) };
    expect(hasAllRequests(old)).toBe(false);
    const { garments: worn } = schemeFromRecord(old);
    expect(worn.map(({ wish }) => [wish.name, wish.way, wish.stuff, wish.trim?.stuff])).toEqual([
      ['cloak', 'deepened in its own hue', 'wool', 'satin'],
      ['sleeve', 'underpaint and glaze', 'satin', undefined],
    ]);
  });
});

describe('a drapery that begins from a formula', () => {
  const head = { name: 'Cloths of the jay', note: '', subject: 'drapery of satin' };
  const formula = (passages: FormulaBody['passages']): FormulaBody => ({
    ...{ ...head, date: '2031-05-17', from: null },
    passages,
  });
  const labs = ({ folds }: Cloth) => folds.map(({ lab }) => lab);

  test('has its cloths as they were painted: ladder, trim and glaze', () => {
    const all = [cloak, sleeve].flatMap((_, i) =>
      formulaOf(garments[i]!, head, shelf).passages.map((one) => ({
        ...one,
        name: `${garments[i]!.name}: ${one.name}`,
      })),
    );
    const { garments: worn } = schemeFromFormula(formula(all))!;
    expect(worn.map(({ wish }) => [wish.name, wish.way, wish.stuff])).toEqual([
      ['cloak', 'as nature had it', 'satin'],
      ['sleeve', 'underpaint and glaze', 'satin'],
    ]);
    expect(worn[0]!.wish.ladder).toEqual(labs(garments[0]!));
    expect(worn[0]!.wish.trim!.ladder).toEqual(labs(garments[0]!.trim!));
    expect(worn[1]!.wish.glaze).toBe('madder_lake');
    expect(worn[1]!.wish.lab).toEqual(garments[1]!.folds[2]!.lab);
  });

  test('of a single garment is called by the formula; of other passages it takes their colours', () => {
    const { passages } = formulaOf(garments[1]!, head, shelf);
    expect(schemeFromFormula(formula(passages))!.garments[0]!.wish.name).toBe(head.name);
    const jug = ['lit side', 'reflected light'].map((name, i) => ({ ...passages[i]!, name }));
    const scheme = schemeFromFormula(formula(jug))!;
    expect(scheme.garments.map(({ wish }) => wish.name)).toEqual(['lit side', 'reflected light']);
    expect(schemeFromFormula(formula([]))).toBeNull();
    expect(passages.map(({ name }) => name).slice(0, 6)).toEqual([...LADDER_STEPS]);
  });
});
