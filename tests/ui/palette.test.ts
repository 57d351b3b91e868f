import { describe, expect, test } from 'vitest';
import { nextVersionMetadata } from '../../src/book/merge/next-version.ts';
import { START } from '../../src/book/schema/hybrid-clock.ts';
import type { Entry } from '../../src/book/schema/record.ts';
import { readRecord } from '../../src/book/schema/record.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { pilesOfSource, withUniqueNames } from '../../src/ui/features/palette/passage-sources.ts';
import {
  leftoverBodyOf,
  leftoverFromEntry,
  manualMixture,
  passageFromEntry,
} from '../../src/ui/state/palette/palette-records.ts';
import { bodies } from '../book/kinds.ts';
import { NOON } from '../book/made.ts';

/** An entry around a body, as the book gives it. */
const entry = <K extends 'passage' | 'leftover' | 'formula' | 'palette' | 'sheet'>(
  kind: K,
  body: object,
) => {
  const clock = '000001234567890-0000';
  return { id: `${kind}-0001`, kind, schema: 1, body, clock } as unknown as Entry<K>;
};

describe('what the palette keeps in the book', () => {
  test('a passage of an older book still opens: equal parts of its coats’ pigments', () => {
    const [layer] = passageFromEntry(entry('passage', bodies.passage)).layers;
    expect(layer!.parts).toEqual([{ pigment: 'red-earth', parts: 1 }]);
    expect(layer!.filmUm).toBeCloseTo(100, 9);
    expect(layer!.spareOil).toBe(0.05);
  });

  test('a pile covers an area or a share, with its own film and allowances', () => {
    const [pile] = bodies.passage.piles;
    const { areaCm2: _, ...rest } = pile!;
    const body = {
      ...bodies.passage,
      canvas: { widthCm: 60, heightCm: 45 },
      piles: [pile, { ...rest, id: 'b', film: 'glaze', share: 0.2, tooth: 0.3, waste: 0 }],
    };
    const { piles, canvas } = passageFromEntry(entry('passage', body));
    expect(canvas).toEqual({ widthCm: 60, heightCm: 45 });
    expect(piles[0]).toMatchObject({ cover: { cm2: 120 }, film: 'body colour', filmUm: 100 });
    expect(piles[1]).toMatchObject({ cover: { share: 0.2 }, film: 'glaze', tooth: 0.3, waste: 0 });
  });

  test('a leftover comes back as it was put away', () => {
    const shelf = starterShelf();
    const { partsLab, parts } = manualMixture([{ pigment: 'lead_white', parts: 1 }], shelf);
    const left = {
      ...{ id: 'leftover-0001', name: 'white', parts, lab: partsLab, cm3: 2 },
      ...{ kept: 'under water' as const, date: '2031-05-17' },
    };
    expect(leftoverFromEntry(entry('leftover', leftoverBodyOf(left)))).toEqual(left);
  });

  test('a formula gives a pile for every coat, and names are kept apart', () => {
    let n = 0;
    const piles = pilesOfSource(entry('formula', bodies.formula), () => `id-${n++}`);
    expect(piles.map(({ film }) => film)).toContain('glaze');
    expect(piles).toHaveLength(1);
    const apart = withUniqueNames([...piles, ...piles], [piles[0]!.name]).map(({ name }) => name);
    expect(new Set([...apart, piles[0]!.name]).size).toBe(2 * piles.length + 1);
  });

  test('an unknown field is still refused', () => {
    const marks = nextVersionMetadata('device-0001', START, NOON, []);
    const record = { id: 'passage-0001', kind: 'passage', created: marks.changed, ...marks };
    const read = (body: object) => readRecord({ ...record, body });
    expect(read(bodies.passage)).toMatchObject({ ok: true, value: { body: bodies.passage } });
    expect(read({ ...bodies.passage, wet: true })).toMatchObject({
      ok: false,
      fault: { code: 'bad-record' },
    });
  });
});
