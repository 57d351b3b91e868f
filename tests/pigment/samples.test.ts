import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { shelfFaultWords } from '../../src/messages/shelf-file-faults.ts';
import { plainNumber } from '../../src/number-format.ts';
import { readShelf } from '../../src/pigment/import/read-shelf.ts';
import { masstonesOf } from '../../src/pigment/nearest-masstone.ts';
import { wholeShelf } from '../../src/pigment/starter-shelf.ts';

const sample = (file: string) => {
  const path = resolve(import.meta.dirname, '../../samples', file);
  const shelf = readShelf(readFileSync(path, 'utf8'), { name: file });
  if (!shelf.ok) throw new Error(shelfFaultWords(shelf.fault, plainNumber));
  return shelf.value;
};

test('the sample shelf in JSON: nine of our own and one with a curve of its own', () => {
  const shelf = sample('shelf.json');
  expect(shelf.name).toBe('Village shelf');
  expect(shelf.paints).toHaveLength(10);
  expect(shelf.white).toBe('lead_white');
  expect(shelf.remarks).toEqual([]);
  const meadow = masstonesOf(shelf).at(-1)!;
  expect(meadow.label).toBe('Meadow green, lot 2');
  expect(meadow.lab[1]).toBeLessThan(-5);
});

test('the sample shelf in CSV: every 20 nm, and still the same paints', () => {
  const shelf = sample('shelf.csv');
  expect(shelf.paints.map(({ pigment }) => pigment)).toContain('Ochre, yellow');
  expect(shelf.white).toBe('Lead white');
  expect(shelf.remarks).toHaveLength(3);
  const known = masstonesOf(wholeShelf());
  const ids = [
    'lead_white',
    'yellow_ochre',
    'burnt_sienna',
    'madder_lake',
    'ultramarine',
    'bone_black',
  ];
  expect(masstonesOf(shelf)).toHaveLength(ids.length);
  masstonesOf(shelf).forEach(({ lab }, i) => {
    const own = known.find(({ pigment }) => pigment === ids[i])!;
    expect(deltaE00(lab, own.lab)).toBeLessThan(1);
  });
});
