import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BANDS, bandNm, type Spectrum, spectrum } from '../../../src/colour/grid.ts';
import { shelfFaultWords } from '../../../src/messages/shelf-file-faults.ts';
import { plainNumber } from '../../../src/number-format.ts';
import { readShelf } from '../../../src/pigment/import/read-shelf.ts';
import type { ShelfFault } from '../../../src/pigment/import/shelf-fault.ts';
import { writeShelfCsv, writeShelfJson } from '../../../src/pigment/import/shelf-json.ts';
import type { Shelf } from '../../../src/pigment/shelf.ts';
import { ownPaint, starterShelf } from '../../../src/pigment/starter-shelf.ts';
import { evenly } from '../../evenly.ts';

const NMS = Array.from({ length: BANDS }, (_, band) => bandNm(band));
const read = (text: string): Shelf => {
  const shelf = readShelf(text, { name: 'test' });
  if (!shelf.ok) throw new Error(shelfFaultWords(shelf.fault, plainNumber));
  return shelf.value;
};
const faultOf = (form: unknown): ShelfFault => {
  const shelf = readShelf(typeof form === 'string' ? form : JSON.stringify(form), { name: 'test' });
  if (shelf.ok) throw new Error('it was read');
  return shelf.fault;
};
const form = (more: object = {}) => ({
  kind: 'kingcup-shelf',
  version: 1,
  name: 'Winter shelf',
  basis: 'volume',
  surface: { k1: 0.03, k2: 0.65 },
  paints: [{ pigment: 'lead_white' }, { pigment: 'yellow_ochre' }],
  ...more,
});
const curve = (value: number) => NMS.map(() => value);

type Coefficients = Record<'K' | 'S', ArrayLike<number>>;
/** Every K and S but for the digits that a file leaves out. */
function expectAlike(found: Coefficients, wanted: Coefficients): void {
  for (const of of ['K', 'S'] as const) {
    expect(found[of]).toHaveLength(BANDS);
    for (let band = 0; band < BANDS; band++)
      expect(found[of][band]! / wanted[of][band]!).toBeCloseTo(1, 5);
  }
}

describe('there and back', () => {
  test('the starter shelf through JSON', () => {
    const shelf = starterShelf();
    const back = read(writeShelfJson(shelf));
    expect(back.white).toBe('lead_white');
    expect(back.surface).toEqual(shelf.surface);
    expect(back.paints.map(({ label }) => label)).toEqual(shelf.paints.map(({ label }) => label));
    back.paints.forEach(({ paint }, i) => {
      expectAlike(paint, shelf.paints[i]!.paint);
    });
  });

  test('any names and numbers through both forms', () => {
    const values = fc.array(evenly(1e-4, 15), {
      minLength: BANDS,
      maxLength: BANDS,
    });
    const name = fc
      .string({ minLength: 1 })
      .filter((text) => text.trim() !== '' && !/[\r\n]/.test(text));
    const paint = fc.record({ pigment: name, K: values, S: values });
    fc.assert(
      fc.property(
        fc.uniqueArray(paint, { selector: (p) => p.pigment, minLength: 1, maxLength: 4 }),
        (rows) => {
          const shelf: Shelf = {
            name: 'any',
            basis: 'mass',
            surface: { k1: 0.02, k2: 0.5, specular: 'included' },
            white: null,
            paints: rows.map(({ pigment, K, S }) => ({
              pigment,
              label: pigment,
              paint: { K: spectrum(K) as Spectrum<'K'>, S: spectrum(S) as Spectrum<'S'> },
            })),
            remarks: [],
          };
          for (const text of [writeShelfJson(shelf), writeShelfCsv(shelf)]) {
            const back = read(text);
            expect(back.paints.map(({ pigment }) => pigment)).toEqual(
              rows.map(({ pigment }) => pigment),
            );
            expect(back.surface).toEqual(shelf.surface);
            expect(back.basis).toBe('mass');
            for (const [i, { paint: read }] of back.paints.entries()) expectAlike(read, rows[i]!);
          }
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('the JSON form', () => {
  test('paints of our own by their ids', () => {
    const shelf = read(JSON.stringify(form()));
    expect(shelf.name).toBe('Winter shelf');
    expect(shelf.white).toBe('lead_white');
    expect(shelf.paints[1]!.label).toBe('Yellow ochre');
    expect(shelf.paints[1]!.paint.K).toEqual(ownPaint('yellow_ochre')!.paint.K);
  });
  test('paints with curves of their own beside them', () => {
    const paints = [{ pigment: 'Meadow', label: 'Meadow green', K: curve(0.4), S: curve(0.1) }];
    const shelf = read(JSON.stringify(form({ paints, wavelengths: NMS, white: null })));
    expect(shelf.paints[0]).toMatchObject({ pigment: 'Meadow', label: 'Meadow green' });
    expect(shelf.white).toBeNull();
  });
  test('a surface seen without glare', () => {
    const surface = { k1: 0.03, k2: 0.65, specular: 'excluded' };
    expect(read(JSON.stringify(form({ surface }))).surface).toEqual(surface);
  });

  test.each<[object, ShelfFault['code']]>([
    [{ paints: [] }, 'shelf-empty'],
    [{ version: 2 }, 'shelf-newer'],
    [{ kind: 'shelf' }, 'shelf-not-a-shelf'],
    [{ paints: 'none' }, 'shelf-not-a-shelf'],
    [{ basis: 'weight' }, 'shelf-basis'],
    [{ surface: { k1: 3, k2: 65 } }, 'shelf-surface'],
    [{ white: 'zinc_white' }, 'shelf-white-unknown'],
    [{ paints: [{ pigment: 'moss' }] }, 'shelf-pigment-unknown'],
    [{ paints: [{ pigment: ' ' }] }, 'shelf-name-missing'],
    [{ paints: [{ pigment: 'indigo' }, { pigment: 'indigo' }] }, 'shelf-name-twice'],
    [{ paints: [{ pigment: 'A', K: curve(1), S: curve(1) }] }, 'shelf-grid-short'],
  ])('%j is refused', (more, code) => {
    const fault = faultOf(form(more));
    expect(fault.code).toBe(code);
    expect(shelfFaultWords(fault, plainNumber)).toMatch(/^.{20,}\.$/s);
  });

  test.each<[object, ShelfFault['code']]>([
    [{ K: curve(1) }, 'shelf-row-missing'],
    [{ K: curve(1), S: curve(0) }, 'shelf-S-not-positive'],
    [{ K: curve(-1), S: curve(1) }, 'shelf-K-negative'],
    [{ K: curve(50), S: curve(70) }, 'shelf-percent'],
    [{ K: [...curve(1), 1], S: curve(1) }, 'shelf-length'],
    [{ K: curve(1).slice(1), S: curve(1) }, 'shelf-band-missing'],
    [{ K: curve(1).with(3, Number.NaN), S: curve(1) }, 'shelf-band-missing'],
    [{ K: [...curve(1).slice(1), '1'], S: curve(1) }, 'shelf-band-text'],
  ])('a paint with %j is refused', (more, code) => {
    const paints = [{ pigment: 'A', ...more }];
    expect(faultOf(form({ paints, wavelengths: NMS })).code).toBe(code);
  });

  test('a file cut short', () => {
    const text = writeShelfJson(starterShelf());
    for (const share of [0.02, 0.5, 0.99])
      expect(faultOf(text.slice(0, Math.floor(share * text.length))).code).toBe('shelf-broken');
  });

  test('whatever comes in, a shelf or a sentence comes out', () => {
    // A sound file with one field changed: read or refused.
    const changed = fc
      .tuple(fc.constantFrom(...Object.keys(form())), fc.jsonValue(), fc.boolean())
      .map(([field, value, isSame]) => JSON.stringify(form(isSame ? {} : { [field]: value })));
    const counted = { read: 0, refused: 0 };
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.json().map((json) => `{"kind":${json}`),
          changed,
        ),
        (text) => {
          const shelf = readShelf(text, { name: 'any' });
          if (shelf.ok) {
            counted.read++;
            expect(shelf.value.paints.map(({ pigment }) => pigment)).toEqual([
              'lead_white',
              'yellow_ochre',
            ]);
          } else {
            counted.refused++;
            expect(shelfFaultWords(shelf.fault, plainNumber)).toMatch(/^.{10,}\.$/s);
          }
        },
      ),
      { numRuns: 300, seed: 11 },
    );
    expect(counted.read).toBeGreaterThan(20);
    expect(counted.refused).toBeGreaterThan(100);
  });
});
