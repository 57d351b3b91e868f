import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { paletteFaultWords } from '../../src/messages/palette-faults.ts';
import { plainNumber } from '../../src/number-format.ts';
import { readDay } from '../../src/palette/day-file.ts';
import { mixtureShelfOf } from '../../src/pigment/mixing-shelf.ts';
import { planDay } from '../../src/sheet/plan-day.ts';

const TEXT = readFileSync(resolve(import.meta.dirname, '../../samples/day.json'), 'utf8');
const SAMPLE = JSON.parse(TEXT);
const LEAST = {
  kind: 'kingcup-day',
  version: 1,
  date: '2026-05-14',
  passages: [{ name: 'Sky', piles: [{ name: 'sky', parts: { lead_white: 1 }, cm2: 10 }] }],
};
const read = (json: object) => readDay(JSON.stringify(json));
const taken = (json: object) => {
  const day = read(json);
  if (!day.ok) throw new Error(paletteFaultWords(day.fault, plainNumber));
  return day.value;
};

test('the sample day can be read and planned', () => {
  const { asked, stock } = taken(SAMPLE);
  expect(asked.palettes.map(({ name }) => name)).toEqual(['The mill stream', 'The red cloth']);
  expect(asked.palettes[0]!.passages).toHaveLength(2);
  const day = planDay(asked, { shelf: mixtureShelfOf(stock!), stock });
  expect(day.ok && day.value.leftOff).toEqual([]);
  expect(day.ok && day.value.lacks).toEqual([]);
});

test('what is left open is what is usual', () => {
  const { asked, stock } = taken(LEAST);
  expect(stock).toBeNull();
  expect(asked.rules).toMatchObject({ shape: 'oval', hand: 'left', pupils: false, edgeCm3: 0.5 });
  expect(asked.rules.allowances).toEqual({ tooth: 0.1, waste: 0.2, heapCm3: 0.5 });
  expect(asked.palettes).toMatchObject([{ name: 'Sky', passages: [{ name: 'Sky', layers: [] }] }]);
  expect(asked.palettes[0]!.passages[0]!.piles[0]).toMatchObject({ film: 'body colour' });
});

test('one allowance alone can be set, and an order by hand names piles', () => {
  const { asked } = taken({
    ...LEAST,
    rules: { waste: 0 },
    passages: [{ ...LEAST.passages[0], order: ['sky'] }],
  });
  expect(asked.rules.allowances).toEqual({ tooth: 0.1, waste: 0, heapCm3: 0.5 });
  expect(asked.palettes[0]!.order).toEqual([asked.palettes[0]!.passages[0]!.piles[0]!.id]);
});

test('a let-down names its white', () => {
  const piles = [
    {
      name: 'blue',
      parts: { zinc_white: 9, prussian_blue: 1 },
      letDowns: { prussian_blue: 20 },
      letDownWhite: 'zinc_white',
      cm2: 10,
    },
  ];
  const { asked } = taken({ ...LEAST, passages: [{ name: 'Sky', piles }] });
  const [pile] = asked.palettes[0]!.passages[0]!.piles;
  expect(pile!.letDowns).toEqual([
    { pigment: 'prussian_blue', white: 'zinc_white', parts: 1, whiteParts: 20 },
  ]);
  expect(pile!.parts!.map(({ letDown }) => letDown ?? false)).toEqual([false, true]);
});

describe('refused with a sentence', () => {
  const pile = (more: object) => ({
    ...LEAST,
    passages: [{ name: 'Sky', piles: [{ name: 'sky', parts: { chalk: 1 }, cm2: 1, ...more }] }],
  });
  test.each([
    ['no JSON', 'oh', /cut short/],
    ['half a file', TEXT.slice(0, 900), /cut short/],
    ['null', 'null', /not a day/],
    ['another kind', { ...LEAST, kind: 'kingcup-shelf' }, /“kind”/],
    ['a newer form', { ...LEAST, version: 2 }, /newer Kingcup/],
    ['no date', { ...LEAST, date: undefined }, /“date” is missing/],
    ['no passages', { ...LEAST, passages: undefined }, /“passages” is missing/],
    ['an unknown field', { ...LEAST, colour: 1 }, /“colour” is nothing that a day knows/],
    ['a film that is none', pile({ film: 'icing' }), /film/],
    ['parts in words', pile({ parts: { chalk: 'two' } }), /parts\.chalk/],
    ['a nameless pile', pile({ name: ' ' }), /name/],
    ['a stock that is none', { ...LEAST, stock: [{ pigment: 'chalk', amount: -4 }] }, /Line 1/],
    ['an unknown pigment in stock', { ...LEAST, stock: [{ pigment: 'mud' }] }, /"mud"/],
  ])('%s', (_, json, sentence) => {
    const day = typeof json === 'string' ? readDay(json) : read(json);
    if (day.ok) throw new Error('it was accepted');
    expect(paletteFaultWords(day.fault, plainNumber)).toMatch(sentence);
    expect(paletteFaultWords(day.fault, plainNumber)).toMatch(/\.$/);
  });
});
