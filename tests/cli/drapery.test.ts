import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectRefusal, kingcup, scratch } from './run.ts';

const folder = scratch();
const said = async (...args: string[]) => {
  const { status, stdout, stderr } = await kingcup('drapery', ...args);
  expect(status, stderr).toBe(0);
  return stdout;
};
const L = (folds: { lab: number[] }[]) => folds.map(({ lab }) => lab[0]!);
const falls = (values: number[]) =>
  values.length === 6 && values.every((v, i) => i === 0 || v < values[i - 1]!);
/** Few paints: each fold of a cloth searches all that there are. */
const REDS = 'lead_white,vermilion,madder_lake,lead_tin_yellow,yellow_ochre,indigo,raw_umber';

describe('drapery', () => {
  test('a cloth with trim and reflected light as JSON', async () => {
    const asked = [
      '--lab',
      '45,45,24',
      '--stuff',
      'satin',
      '--trim',
      '#d8c070',
      '--neighbour',
      '#5f7f95',
      '--only',
      REDS,
    ];
    const { garments } = JSON.parse(await said(...asked, '--json'));
    const [garment] = garments;
    expect(falls(L(garment.folds))).toBe(true);
    expect(falls(L(garment.trim.folds))).toBe(true);
    expect(garment.reflected.lab[0]).toBeLessThan(garment.folds[3].lab[0]);
    expect(garment.black.why).toBeNull();
    for (const { mixture } of garment.folds) expect(mixture.parts.length).toBeGreaterThan(0);
  });

  test('a drawing of the cloths, with words', async () => {
    const svg = await said(
      '--lab',
      '42,0,-26',
      '--svg',
      '--only',
      'lead_white,azurite,ultramarine,bone_black',
    );
    expect(svg).toMatch(/^<svg xmlns[\s\S]*<title>Hanging cloth: [^<]*wool[\s\S]*<path d="M/);
    expect(svg).not.toMatch(/undefined|NaN/);
  });

  test('a ladder that was gathered, as nature had it', async () => {
    const ladder = [88, 70, 55, 44, 34, 28].map((l) => ({ lab: [l, 10, 16] }));
    const path = join(folder, 'harmony.json');
    writeFileSync(
      path,
      JSON.stringify({
        photos: [{ colours: [{ name: 'bark', lab: [55, 10, 16], share: 1, ladder }] }],
      }),
    );
    const { garments } = JSON.parse(await said('--harmony', path, '--json', '--only', REDS));
    expect(garments[0].way).toBe('as nature had it');
    expect(garments[0].name).toBe('bark');
    expect(falls(L(garments[0].folds))).toBe(true);
  });

  test('a formula by passages, and a table in words', async () => {
    const { formulas } = JSON.parse(await said('--hex', '#a0503c', '--formula', '--only', REDS));
    expect(formulas[0].passages.map(({ name }: { name: string }) => name)[0]).toBe('highlight');
    expect(await said('--hex', '#4a6a4a')).toMatch(/deepest fold .*Deepened with/s);
  });

  test.each([
    [['--hex', '#808080', '--way', 'fancy'], /nature, deepened, shot, glaze/],
    [['--hex', '#808080', '--stuff', 'silk'], /linen, wool, satin, velvet/],
    [['--hex', '#a05030', '--way', 'shot'], /colour of its shadows/],
    [['--hex', '#a05030', '--way', 'nature'], /six steps/],
    [['--hex', '#a05030', '--way', 'glaze', '--glaze', 'red_earth'], /makes no glaze/],
    [['--hex', '#a05030', '--only', 'lead_white'], /six lightnesses/],
    [[], /Name a colour/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('drapery', ...options, '--json'), sentence);
  });
});
