import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { expectRefusal, kingcup, SAMPLES, scratch } from './run.ts';

const folder = scratch();
const file = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

async function mixed(...args: string[]) {
  const { status, stdout, stderr } = await kingcup('mix', ...args, '--json');
  expect(status, stderr).toBe(0);
  return JSON.parse(stdout).mixtures;
}

const BANDS = Array.from({ length: 36 }, (_, i) => 380 + 10 * i);
const row = (index: number, name: string, kind: 'K' | 'S', value: (nm: number) => number) =>
  [index, name, kind, ...BANDS.map((nm) => value(nm).toFixed(4))].join(',');
const shelfText = (rows: string[], head = '# surface: 0.03,0.65\n# basis: volume\n') =>
  `${head}index,colour,coefficient,${BANDS.join(',')}\n${rows.join('\n')}\n`;
const WHITE = [row(1, 'White paste', 'K', () => 0.002), row(1, 'White paste', 'S', () => 1)];
const BLUE = [
  row(2, 'A "deep", blue', 'K', (nm) => (nm < 500 ? 0.05 : 1)).replace(
    'A "deep", blue',
    '"A ""deep"", blue"',
  ),
  row(2, 'x', 'S', () => 0.1).replace(',x,', ',"A ""deep"", blue",'),
];

describe('mix', () => {
  test('writes one JSON document in the form that the design promises', async () => {
    const [first, second] = await mixed('--lab', '62,18,34', '--hex', '#46637f');
    for (const mixture of [first, first.simplest, ...first.alternatives, second]) {
      expect(mixture.lab).toHaveLength(3);
      expect(mixture.deltaE00).toBeGreaterThanOrEqual(0);
      expect(mixture.reachable).toBe(mixture.deltaE00 <= 1);
      const sum = mixture.recipe.reduce((a: number, { share }: { share: number }) => a + share, 0);
      expect(sum).toBeCloseTo(1, 9);
      expect(mixture.recipe.length).toBeLessThanOrEqual(4);
      expect(mixture.parts.length).toBeGreaterThan(0);
      for (const { parts } of mixture.parts) expect(Number.isInteger(parts)).toBe(true);
      expect(mixture.partsLab).toHaveLength(3);
    }
    expect(first.target).toEqual([62, 18, 34]);
    expect(deltaE00(first.target, first.lab)).toBeCloseTo(first.deltaE00, 6);
    expect(deltaE00(first.target, first.partsLab)).toBeCloseTo(first.partsDeltaE00, 6);
  });

  test('targets keep the order in which they were typed', async () => {
    const targets = (await mixed('--hex', '#808080', '--lab', '40,10,-10', '--hex', '#ffffff')).map(
      ({ target }: { target: number[] }) => Math.round(target[0]!),
    );
    expect(targets).toEqual([54, 40, 100]);
  });

  test('takes what gather wrote', async () => {
    const harmony = (await kingcup('gather', join(SAMPLES, 'rowan-branch.jpg'), '--json')).stdout;
    const count = JSON.parse(harmony).photos[0].colours.length;
    expect(count).toBeGreaterThan(0);
    const path = file('harmony.json', harmony);
    const answers = await mixed('--harmony', path);
    expect(answers).toHaveLength(count);
    const [asSeen] = answers;
    const [keyed] = await mixed('--harmony', path, '--key');
    expect(keyed.seen).toEqual(asSeen.target);
  });

  test('at most so many pigments as asked for', async () => {
    for (const most of [1, 2, 3]) {
      const [{ recipe }] = await mixed('--lab', '50,20,10', '--most', String(most));
      expect(recipe.length).toBeGreaterThan(0);
      expect(recipe.length).toBeLessThanOrEqual(most);
    }
  });

  test('names pigments as the shelf file does, letter for letter', async () => {
    const shelf = file('shelf.csv', shelfText([...WHITE, ...BLUE]));
    const [{ recipe }] = await mixed('--lab', '50,-5,-25', '--shelf', shelf);
    expect(recipe.map(({ pigment }: { pigment: string }) => pigment).sort()).toEqual([
      'A "deep", blue',
      'White paste',
    ]);
  });

  test('--surface overrides the shelf’s own', async () => {
    const shelf = file('shelf.csv', shelfText([...WHITE, ...BLUE]));
    const lightness = async (...more: string[]): Promise<number> =>
      (await mixed('--lab', '2,0,0', '--shelf', shelf, ...more))[0].lab[0];
    const own = await lightness();
    expect(await lightness('--surface', '0,0')).not.toBeCloseTo(own, 1);
    expect(await lightness('--surface', '0.03,0.65')).toBeCloseTo(own, 9);
  });

  test('a target that no surface has gets the nearest mixture', async () => {
    const [{ reachable, deltaE00: away }] = await mixed('--lab', '50,160,-160');
    expect(reachable).toBe(false);
    expect(away).toBeGreaterThan(10);
  });

  test('a shelf without white, and one with a single pigment, work with a remark', async () => {
    const one = file('one.csv', shelfText(BLUE));
    const { status, stderr, stdout } = await kingcup(
      'mix',
      '--hex',
      '#808080',
      '--shelf',
      one,
      '--json',
    );
    expect(status).toBe(0);
    expect(stderr).toMatch(/white/i);
    expect(JSON.parse(stdout).mixtures[0].recipe).toEqual([
      { pigment: 'A "deep", blue', share: 1 },
    ]);
  });

  test.each([
    [['--lab', '50,0'], /three|3 numbers/],
    [['--lab', '101,0,0'], /0 to 100/],
    [['--lab', '50,161,0'], /160/],
    [['--lab', 'NaN,0,0'], /numbers/],
    [['--hex', '#12345'], /hexadecimal/],
    [['--hex', 'red'], /hexadecimal/],
    [['--most', '7', '--hex', '#808080'], /1 to 6/],
    [['--most', '0', '--hex', '#808080'], /1 to 6/],
    [['--surface', '1', '--hex', '#808080'], /2 numbers/],
    [['--surface', '0.03,1', '--hex', '#808080'], /below 1/],
    [['--shelf', '/nowhere.csv', '--hex', '#808080'], /cannot be opened/],
    [['--harmony', '/nowhere.json'], /cannot be opened/],
    [[], /Name a colour/],
    [['stray', '--hex', '#808080'], /stray/],
    [['--tint', '--hex', '#808080'], /--tint/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('mix', ...options, '--json'), sentence);
  });

  test.each([
    ['an empty file', '', /holds no paint/],
    ['no rows', shelfText([]), /no (pigment|paint)|empty/i],
    [
      'a negative K',
      shelfText([...WHITE, row(2, 'Odd', 'K', () => -1), row(2, 'Odd', 'S', () => 1)]),
      /Odd/,
    ],
    ['an S of 0', shelfText([row(2, 'Odd', 'K', () => 1), row(2, 'Odd', 'S', () => 0)]), /Odd/],
    ['no JSON', '{"pigments": [', /its JSON cannot be read/],
  ])('refuses a shelf with %s', async (name, text, sentence) => {
    const path = file(`bad-${name.replaceAll(' ', '-')}.csv`, text);
    expectRefusal(await kingcup('mix', '--hex', '#808080', '--shelf', path, '--json'), sentence);
  });

  test.each([
    ['not JSON', 'oh', /not JSON/],
    ['without colours', '{"photos":[]}', /no colours/],
    ['null', 'null', /no colours/],
    ['a colour without numbers', '{"photos":[{"colours":[{"lab":[1,2]}]}]}', /three numbers/],
    ['a colour out of range', '{"photos":[{"colours":[{"lab":[150,2,3]}]}]}', /0 to 100/],
  ])('refuses a harmony that is %s', async (name, text, sentence) => {
    const path = file(`harmony-${name.replaceAll(' ', '-')}.json`, text);
    expectRefusal(await kingcup('mix', '--harmony', path, '--json'), sentence);
  });
});
