import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectRefusal, kingcup, SAMPLES, scratch } from './run.ts';

const DAY = join(SAMPLES, 'day.json');
const SAMPLE = JSON.parse(readFileSync(DAY, 'utf8'));
const folder = scratch();
function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}
async function result(...args: string[]) {
  const { status, stdout, stderr } = await kingcup('palette', ...args, '--json');
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}

describe('palette', () => {
  test('help tells the form of a day', async () => {
    const { status, stdout } = await kingcup('palette', '--help');
    expect(status).toBe(0);
    expect(stdout).toMatch(/kingcup-day/);
  });

  test('lays every palette: white first, amounts, rows', async () => {
    const { palettes, leftOff } = await result(DAY);
    expect(leftOff).toEqual([]);
    expect(palettes.map(({ name }: { name: string }) => name)).toEqual([
      'The mill stream',
      'The red cloth',
    ]);
    for (const { seats, piles } of palettes) {
      expect(seats[0].pigment).toBe('lead_white');
      expect(piles.length).toBeGreaterThan(1);
      for (const pile of piles) {
        expect(pile.prepareCm3).toBeCloseTo(pile.pasteCm3 + pile.spareOilCm3, 9);
        expect(pile.prepareCm3).toBeCloseTo(pile.netCm3 * 1.1 * 1.2 + 0.5, 9);
      }
    }
  });

  test('one palette, in words and as a drawing', async () => {
    expect((await kingcup('palette', DAY, '--palette', '2')).stdout).toMatch(
      /The red cloth.*Vermilion/s,
    );
    const { stdout } = await kingcup('palette', DAY, '--palette', '2', '--svg');
    expect(stdout).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg".*<\/svg>\n$/s);
    expect(stdout).toContain('madder');
  });

  test('what a shorter set costs', async () => {
    const { fewest } = await result(DAY, '--palette', '2', '--fewest');
    expect(fewest.curve[0].count).toBe(1);
    expect(fewest.piles).toHaveLength(fewest.curve[0].deltaE00.length);
  });

  test('another shelf: its own names, and its basis', async () => {
    const passages = [
      { name: 'Sky', piles: [{ name: 'sky', parts: { 'Old white': 1 }, cm2: 50 }] },
    ];
    const { rules: _, stock: __, leftovers: ___, ...rest } = SAMPLE;
    const day = file('day.json', { ...rest, passages });
    const shelf = file('shelf.json', {
      kind: 'kingcup-shelf',
      version: 1,
      surface: { k1: 0.03, k2: 0.65 },
      paints: [{ pigment: 'lead_white' }, { pigment: 'bone_black' }],
    });
    const { seats } = (await result(day, '--shelf', shelf)).palettes[0];
    expect(seats[0].pigment).toBe('Old white');
    const sheet = (await kingcup('sheet', day, '--shelf', shelf)).stdout;
    expect(sheet).toMatch(/no grams/);
  });

  test.each([
    ['nothing', [], /Name a day/],
    ['a file that is not there', ['/nowhere.json'], /cannot be opened/],
    ['two files', [DAY, DAY], /One day at a time/],
    ['no JSON', [file('bad.json', 'oh')], /cut short/],
    ['a palette that is not there', [DAY, '--palette', '3'], /from 1 to 2/],
    ['two forms at once', [DAY, '--svg', '--json'], /one of/],
    ['a stray option', [DAY, '--tint'], /--tint/],
    [
      'no area',
      [
        file('none.json', {
          ...SAMPLE,
          passages: [
            {
              name: 'Sky',
              piles: [
                { name: 'sky', parts: { lead_white: 1 }, cm2: 0 },
                { name: 'cloud', parts: { lead_white: 1 }, cm2: 5, filmUm: -3 },
              ],
            },
          ],
        }),
      ],
      /“sky” has no area.*\n“cloud” is laid -3 micrometres/,
    ],
  ])('%s is refused with a sentence', async (_, args, sentence) => {
    expectRefusal(await kingcup('palette', ...args), sentence);
  });
});
