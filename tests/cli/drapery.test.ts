import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectRefusal, kingcup, scratch } from './run.ts';

const said = (...args: string[]) => {
  const { status, stdout, stderr } = kingcup('drapery', ...args);
  expect(status, stderr).toBe(0);
  return stdout;
};
const L = (folds: { lab: number[] }[]) => folds.map(({ lab }) => lab[0]!);
const falls = (values: number[]) => values.every((v, i) => i === 0 || v < values[i - 1]!);

describe('drapery', () => {
  test('a cloth with trim and reflected light as JSON', () => {
    const asked = [
      '--lab',
      '45,45,24',
      '--stuff',
      'satin',
      '--trim',
      '#d8c070',
      '--neighbour',
      '#5f7f95',
    ];
    const { garments } = JSON.parse(said(...asked, '--json'));
    const [garment] = garments;
    expect(falls(L(garment.folds))).toBe(true);
    expect(falls(L(garment.trim.folds))).toBe(true);
    expect(garment.reflected.lab[0]).toBeLessThan(garment.folds[3].lab[0]);
    expect(garment.black.why).toBeNull();
    for (const { mixture } of garment.folds) expect(mixture.parts.length).toBeGreaterThan(0);
  });

  test('a drawing of the cloths, with words', () => {
    const svg = said('--lab', '42,0,-26', '--svg');
    expect(svg).toMatch(/^<svg xmlns[\s\S]*<title>Hanging cloth: [^<]*wool[\s\S]*<path d="M/);
    expect(svg).not.toMatch(/undefined|NaN/);
  });

  test('a ladder that was gathered, as nature had it', () => {
    const ladder = [88, 70, 55, 44, 34, 28].map((l) => ({ lab: [l, 10, 16] }));
    const path = join(scratch(), 'harmony.json');
    writeFileSync(
      path,
      JSON.stringify({
        photos: [{ colours: [{ name: 'bark', lab: [55, 10, 16], share: 1, ladder }] }],
      }),
    );
    const { garments } = JSON.parse(said('--harmony', path, '--json'));
    expect(garments[0].way).toBe('as nature had it');
    expect(garments[0].name).toBe('bark');
    expect(falls(L(garments[0].folds))).toBe(true);
  });

  test('a formula by passages, and a table in words', () => {
    const { formulas } = JSON.parse(said('--hex', '#4a6a4a', '--formula'));
    expect(formulas[0].passages.map(({ name }: { name: string }) => name)[0]).toBe('highlight');
    expect(said('--hex', '#4a6a4a')).toMatch(/deepest fold .*Deepened with|deepest fold/s);
  });

  test.each([
    [['--hex', '#808080', '--way', 'fancy'], /nature, deepened, shot, glaze/],
    [['--hex', '#808080', '--stuff', 'silk'], /linen, wool, satin, velvet/],
    [['--hex', '#a05030', '--way', 'shot'], /colour of its shadows/],
    [['--hex', '#a05030', '--way', 'nature'], /six steps/],
    [['--hex', '#a05030', '--way', 'glaze', '--glaze', 'red_earth'], /makes no glaze/],
    [['--hex', '#a05030', '--only', 'lead_white'], /six lightnesses/],
    [[], /Name a colour/],
  ])('refuses %j with a sentence', (options, sentence) => {
    expectRefusal(kingcup('drapery', ...options, '--json'), sentence);
  });
});
