import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import figures from '../../src/pigment/data/figures.json' with { type: 'json' };
import { describeShared, readShared } from '../shared.ts';
import { figuresOf, readSheet } from '../tools/pigment-figures.ts';

// KINGCUP_WRITE=1 writes the file anew from the sheet; otherwise this says whether they still agree.
describeShared('the handbook sheet', () => {
  const made = figuresOf(readSheet(readShared('reference/pigment-facts.csv')));

  test.runIf(process.env.KINGCUP_WRITE === '1')('write the figures', () => {
    const { pigments, ...head } = made;
    const rows = pigments.map((row) => `  ${JSON.stringify(row)}`).join(',\n');
    const text = `${JSON.stringify(head, null, 1).slice(0, -2)},\n "pigments": [\n${rows}\n ]\n}\n`;
    const path = resolve(import.meta.dirname, '../../src/pigment/data/figures.json');
    writeFileSync(path, text);
  });

  test('every figure is the one that the sheet prints', () => {
    if (process.env.KINGCUP_WRITE !== '1')
      expect(figures).toEqual(JSON.parse(JSON.stringify(made)));
    expect(made.pigments).toHaveLength(48);
  });
});
