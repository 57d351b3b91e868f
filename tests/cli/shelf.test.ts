import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectRefusal, kingcup, scratch } from './run.ts';

const folder = scratch();
const file = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

async function json(...args: string[]) {
  const { status, stdout, stderr } = await kingcup('shelf', ...args, '--json');
  expect(status, stderr).toBe(0);
  return JSON.parse(stdout);
}

const grid = (from: number, to: number, step: number) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + step * i);

/** Two paints on a grid: a white, and a red whose K falls from 2 to 0.02 about 590 nm. */
function csv(nms: readonly number[], change: (cells: string[][]) => void = () => {}): string {
  const red = (nm: number) => 0.02 + 1.98 / (1 + Math.exp((nm - 590) / 12));
  const rows = [
    ['White paste', 'K', () => 0.002],
    ['White paste', 'S', () => 1],
    ['Red, "old"', 'K', red],
    ['Red, "old"', 'S', () => 0.3],
  ] as const;
  const cells = rows.map(([name, row, value], i) => [
    String(1 + (i >> 1)),
    `"${name.replaceAll('"', '""')}"`,
    row,
    ...nms.map((nm) => value(nm).toFixed(5)),
  ]);
  change(cells);
  return [
    '# surface: 0.03,0.65',
    '# basis: volume',
    `index,pigment,coefficient,${nms.join(',')}`,
    ...cells.map((line) => line.join(',')),
  ].join('\n');
}
const TENS = grid(380, 730, 10);
/** The cell of a row (0 to 3 above) at a wavelength of TENS. */
const at = (nm: number) => 3 + TENS.indexOf(nm);

describe('shelf list', () => {
  test('names the starter shelf from light to dark, its white and its hazards', async () => {
    const { paints, white, basis, remarks } = await json('list');
    expect(paints.length).toBeGreaterThanOrEqual(16);
    const lightness = paints.map(({ lab }: { lab: number[] }) => lab[0]);
    expect(lightness).toEqual(lightness.toSorted((p: number, q: number) => q - p));
    expect(white).toBe('lead_white');
    expect(basis).toBe('volume');
    expect(remarks).toEqual([]);
    const lead = paints.find(({ pigment }: { pigment: string }) => pigment === white);
    expect(lead).toMatchObject({ label: 'Lead white', family: 'white', hazard: 'toxic' });
    expect(lead.hex).toMatch(/^#[0-9a-f]{6}$/);
  });

  test('in plain text too, with nothing else on standard output', async () => {
    const { status, stdout, stderr } = await kingcup('shelf', 'list');
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^starter shelf: \d+ paints\n/);
    expect(stdout).toMatch(/Vermilion.*toxic/);
    expect(stdout).toMatch(/Lead white.*the studio's white/);
  });

  test('knows more than the starter shelf', async () => {
    expect((await json('list', '--all')).paints.length).toBeGreaterThanOrEqual(26);
  });

  test('reads a file and says on standard error what was assumed', async () => {
    const path = file('short.csv', csv(grid(400, 700, 10)));
    const { status, stdout, stderr } = await kingcup('shelf', 'list', '--shelf', path, '--json');
    expect(status).toBe(0);
    expect(stderr).toMatch(/400 nm.*flat to 380/);
    expect(JSON.parse(stdout).paints.map(({ pigment }: { pigment: string }) => pigment)).toEqual([
      'White paste',
      'Red, "old"',
    ]);
  });
});

describe('shelf show', () => {
  test.each(['lead_white', 'Lead white', 'LEAD-WHITE', 'flake white', 'PW1'])(
    'finds lead white by “%s”',
    async (name) => {
      expect((await json('show', name)).pigment).toBe('lead_white');
    },
  );

  test('gives identity, curve, colours, figures with their provenance, hazard and caution', async () => {
    const shown = await json('show', 'vermilion');
    expect(shown.curve.wavelengths).toEqual(TENS);
    expect(shown.curve.K).toHaveLength(36);
    expect(shown.curve.S.every((s: number) => s > 0)).toBe(true);
    expect(shown.lab).toHaveLength(3);
    expect(shown.tint).toMatchObject({ white: 'lead_white', toWhite: 5 });
    expect(shown.tint.lab[0]).toBeGreaterThan(shown.lab[0]);
    // Mineral tables give cinnabar 8.0 to 8.2 g/cm3 (from memory).
    expect(shown.facts.density.value).toBeGreaterThan(8);
    expect(shown.facts.density.value).toBeLessThan(8.3);
    for (const key of ['density', 'oil', 'opacity', 'drying', 'lightfast', 'hazard'])
      expect(shown.facts[key].status).toMatch(/^(seen2?|calc|mem|est|common practice)$/);
    expect(shown.facts.hazard).toMatchObject({ level: 'toxic' });
    expect(shown.facts.hazard.caution).toMatch(/heat/i);
    expect(shown.defersTo).toMatch(/safety data sheet.*local codes.*licensed practice/);
  });

  test('says in plain text how each figure is known, and defers to the data sheet', async () => {
    const { stdout } = await kingcup('shelf', 'show', 'vermilion');
    expect(stdout).toMatch(/density +8\.\d/);
    expect(stdout).toMatch(/\[mem\] +from memory of a handbook/);
    expect(stdout).toMatch(/Hazard \(toxic\).*mercury/i);
    expect(stdout).toMatch(/licensed practice come first/);
  });

  test('a pigment without K and S has its facts all the same', async () => {
    const shown = await json('show', 'saffron');
    expect(shown.lab).toBeNull();
    expect(shown.curve).toBeNull();
    expect(shown.facts.name).toBe('Saffron');
  });

  test('a paint of a file that is on no list: its curve, and a warning', async () => {
    const path = file('own.csv', csv(TENS));
    const shown = await json('show', 'red, "old"', '--shelf', path);
    expect(shown.pigment).toBe('Red, "old"');
    expect(shown.facts).toBeNull();
    expect(shown.curve.S).toEqual(TENS.map(() => 0.3));
    const { stdout } = await kingcup('shelf', 'show', 'Red, "old"', '--shelf', path);
    expect(stdout).toMatch(/not on our list.*data sheet/);
  });
});

describe('shelf check', () => {
  test('says what a sound file holds', async () => {
    const path = file('sound.csv', csv(TENS));
    const { status, stdout, stderr } = await kingcup('shelf', 'check', path);
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^sound\.csv can be used as a shelf\.\nsound\.csv: 2 paints\n/);
    expect(await json('check', path)).toMatchObject({
      file: path,
      white: 'White paste',
      surface: { k1: 0.03, k2: 0.65 },
      remarks: [],
    });
  });

  const colours = async (path: string) =>
    (await json('check', path)).paints.map(({ lab }: { lab: number[] }) => lab) as number[][];

  test.each([5, 20])(
    'a grid of %d nm is resampled, said so, and keeps its colours',
    async (step) => {
      const path = file(`grid-${step}.csv`, csv(grid(380, 740, step)));
      const { remarks } = await json('check', path);
      expect(remarks).toContainEqual(`Values every ${step} nm were brought to every 10 nm.`);
      const truth = await colours(file('tens.csv', csv(TENS)));
      // The edge is 12 nm wide: 20 nm steps blur it a little, 5 nm steps hardly.
      const found = await colours(path);
      expect(found).toHaveLength(2);
      for (const [i, lab] of found.entries())
        for (const [axis, value] of lab.entries())
          expect(Math.abs(value - truth[i]![axis]!)).toBeLessThan(step === 5 ? 0.6 : 1.5);
    },
  );

  test.each<[name: string, text: string, sentence: RegExp]>([
    [
      'a missing band',
      csv(TENS, (cells) => {
        cells[2]![at(540)] = '';
      }),
      /Red, "old".*no K at 540 nm/,
    ],
    [
      'a row that ends early',
      csv(TENS, (cells) => {
        cells[3]!.pop();
      }),
      /Red, "old".*no S at 730 nm/,
    ],
    [
      'words for a number',
      csv(TENS, (cells) => {
        cells[0]![at(600)] = 'n/a';
      }),
      /White paste.*n\/a.*600 nm.*not a number/,
    ],
    [
      'a negative K',
      csv(TENS, (cells) => {
        cells[2]![at(700)] = '-0.01';
      }),
      /Red, "old".*K -0\.01 at 700 nm.*never below 0/,
    ],
    [
      'an S of 0',
      csv(TENS, (cells) => {
        cells[3]![at(450)] = '0';
      }),
      /Red, "old".*S 0 at 450 nm.*above 0/,
    ],
    [
      'per cent instead of fractions',
      csv(TENS, (cells) => {
        for (const line of cells)
          for (let i = 3; i < line.length; i++) line[i] = String(100 * Number(line[i]));
      }),
      /White paste.*per cent.*Divide all values by 100/,
    ],
    ['a grid that starts at 420 nm', csv(grid(420, 730, 10)), /420 to 730 nm.*400 to 700/],
    ['a grid that ends at 680 nm', csv(grid(380, 680, 10)), /380 to 680 nm.*400 to 700/],
    ['a grid of 40 nm', csv(grid(380, 740, 40)), /Between 380 and 420 nm/],
    ['no K row', csv(TENS, (cells) => void cells.splice(2, 1)), /Red, "old".*no K row/],
    [
      'a name that is there twice',
      csv(TENS, (cells) => void cells.push(cells[0]!, cells[1]!)),
      /White paste/,
    ],
    ['nothing in it', '', /no paint/],
    ['half a JSON document', '{"kind":"kingcup-shelf","paints":[', /damaged|cut short/],
    ['another JSON document', '{"photos":[]}', /not a shelf/],
    ['a poem', 'Roses are red\nviolets are blue', /not a shelf/],
  ])('refuses a file with %s in one plain sentence', async (name, text, sentence) => {
    const path = file(`${name.replaceAll(/\W+/g, '-')}.csv`, text);
    const answer = await kingcup('shelf', 'check', path, '--json');
    expectRefusal(answer, sentence);
    expect(answer.stderr).toMatch(/^[\w-]+\.csv: /);
    expect(answer.stderr.trim().split('\n')).toHaveLength(1);
  });
});

test.each<[args: string[], sentence: RegExp]>([
  [[], /list, show PIGMENT, check FILE/],
  [['tidy'], /no “tidy”/],
  [['show'], /Name a pigment/],
  [['show', 'unobtainium'], /No pigment here is called “unobtainium”/],
  [['show', 'white'], /Did you mean lead_white/],
  [['show', ''], /No pigment here/],
  [['show', 'lead', 'white'], /“white” is one too many.*quotes/],
  [['check'], /Name a file/],
  [['check', '/nowhere.csv'], /cannot be opened/],
  [['check', '/tmp'], /cannot be opened/],
  [['check', 'a.csv', '--all'], /takes the file itself/],
  [['list', 'stray'], /“stray” is one too many/],
  [['list', '--shelf', '/nowhere.csv'], /cannot be opened/],
  [['list', '--all', '--shelf', 'a.csv'], /do not go together/],
  [['list', '--tint'], /--tint/],
])('refuses shelf %j with a sentence', async (args, sentence) => {
  expectRefusal(await kingcup('shelf', ...args, '--json'), sentence);
});

test('shelf --help says what it takes, and Kingcup lists it', async () => {
  expect((await kingcup('shelf', '--help')).stdout).toMatch(/kingcup shelf check FILE/);
  expect((await kingcup('--help')).stdout).toMatch(/^ {2}shelf /m);
});
