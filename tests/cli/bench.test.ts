import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { ofParts, predictColour } from '../../src/mixture/predict.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { expectRefusal, kingcup, SAMPLES, scratch } from './run.ts';

const folder = scratch();
const harmony = join(folder, 'harmony.json');
beforeAll(async () => {
  const gathered = await kingcup('gather', join(SAMPLES, 'rowan-branch.jpg'), '--json');
  writeFileSync(harmony, gathered.stdout);
});

async function json(...args: string[]) {
  const { status, stdout, stderr } = await kingcup(...args, '--json');
  expect(status, stderr).toBe(0);
  return JSON.parse(stdout);
}
const mixed = async (...args: string[]) => (await json('mix', ...args)).mixtures;
type Parts = { pigment: string; parts: number }[];

describe('mix under a wish', () => {
  test('leaves out, must hold, without black, without danger', async () => {
    const names = async (...args: string[]) =>
      (await mixed('--lab', '62,18,34', ...args)).flatMap(
        (one: { parts: Parts; simplest: { parts: Parts } }) =>
          [...one.parts, ...one.simplest.parts].map((part) => part.pigment),
      );
    expect(await names()).toContain('yellow_ochre');
    const without = await names('--leave-out', 'Yellow ochre');
    expect(without.length).toBeGreaterThan(0);
    expect(without).not.toContain('yellow_ochre');
    expect(await names('--must', 'raw_umber')).toContain('raw_umber');
    expect(await names()).toContain('lead_tin_yellow');
    const mild = await names('--hazard', 'toxic');
    expect(mild.length).toBeGreaterThan(0);
    expect(mild).not.toContain('lead_white');
    expect(mild).not.toContain('lead_tin_yellow');
    expect(await names('--lab', '25,0,-1')).toContain('charcoal_black');
    const coloured = await names('--lab', '25,0,-1', '--no-black');
    expect(coloured.length).toBeGreaterThan(0);
    for (const black of ['bone_black', 'charcoal_black']) expect(coloured).not.toContain(black);
    const only = ['--only', 'lead_white', '--only', 'red_earth', '--only', 'raw sienna'];
    const few = await names(...only);
    expect(few.length).toBeGreaterThan(0);
    for (const name of few) expect(['lead_white', 'red_earth', 'raw_sienna']).toContain(name);
  });

  test('coarse parts are twelve in all', async () => {
    const total = async (...more: string[]) =>
      (await mixed('--lab', '62,18,34', ...more))[0].parts.reduce(
        (sum: number, p: Parts[number]) => sum + p.parts,
        0,
      );
    expect(await total()).toBeGreaterThan(12);
    const coarse = await total('--coarse');
    expect(coarse).toBeGreaterThan(0);
    expect(coarse).toBeLessThanOrEqual(12);
  });

  test('lightness kept first comes nearer in lightness', async () => {
    const away = async (keep: string) =>
      Math.abs((await mixed('--lab', '60,70,50', '--keep', keep))[0].lab[0] - 60);
    expect(await away('lightness')).toBeLessThan(await away('nearest'));
  });

  test('the promised form has nothing more until it is asked for', async () => {
    const keys = Object.keys((await mixed('--lab', '46,-22,31'))[0]);
    expect(keys).toContain('recipe');
    for (const more of ['judgement', 'lacking', 'seen']) expect(keys).not.toContain(more);
    const [{ judgement, lacking }] = await mixed('--lab', '46,-60,31', '--judge', '--lacking');
    expect(judgement.slip.deltaE00).toBeGreaterThanOrEqual(0);
    expect(Array.isArray(lacking)).toBe(true);
    expect(lacking[0]).toMatchObject({ label: expect.any(String), deltaE00: expect.any(Number) });
  });

  test('out of reach is told in plain words', async () => {
    expect((await kingcup('mix', '--lab', '60,80,60')).stdout).toMatch(
      /Out of reach: .* on the shelf/,
    );
  });

  test.each([
    [['--leave-out', 'unobtainium'], /“unobtainium” is not on the shelf/],
    [['--must', 'azurite', '--leave-out', 'azurite'], /Azurite is asked for .* left out as well/],
    [['--must', 'azurite', '--must', 'malachite', '--most', '1'], /2 pigments .* at most 1/],
    [['--must', 'bone_black', '--no-black'], /left out as well/],
    [['--keep', 'soul'], /nearest, hue or lightness/],
    [['--hazard', 'some'], /caution, toxic or very-toxic/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('mix', '--hex', '#808080', ...options, '--json'), sentence);
  });
});

describe('odd shelves', () => {
  // No white; two paints that are the same; a lake that scatters next to nothing.
  const bands = Array.from({ length: 36 }, (_, i) => 380 + 10 * i);
  const row = (name: string, kind: 'K' | 'S', of: (nm: number) => number) =>
    `1,${name},${kind},${bands.map((nm) => of(nm).toFixed(5)).join(',')}`;
  const red = (nm: number) => (nm < 590 ? 1.6 : 0.01);
  const shelfOf = (...rows: string[]) => {
    const path = join(folder, `odd-${rows.length}.csv`);
    const head = `# surface: 0.03,0.65\n# basis: volume\nindex,colour,coefficient,${bands.join(',')}`;
    writeFileSync(path, `${[head, ...rows].join('\n')}\n`);
    return path;
  };
  const twins = ['red', 'red too'].flatMap((name) => [
    row(name, 'K', red),
    row(name, 'S', () => 0.3),
  ]);
  const lake = [row('lake', 'K', red), row('lake', 'S', () => 0.0001)];

  test.each([
    ['mix', /^ {2}simplest .*\bred\b/m],
    ['transpose', /^ {2}transposed .* reached$/m],
    ['fewest', /^ {3}1 .*\bred\b/m],
    ['vary', /^ {2}as it is .*\bred\b/m],
  ])('%s answers with a remark', async (verb, answer) => {
    const shelf = shelfOf(...twins, ...lake);
    const { status, stdout, stderr } = await kingcup(verb, '--lab', '60,40,20', '--shelf', shelf);
    expect(status, stderr).toBe(0);
    expect(stderr).toMatch(/no white/i);
    expect(stdout).toMatch(answer);
    expect(stdout).not.toMatch(/NaN|undefined|red too.*red |red .*red too/);
  });

  test('a lake alone is called a glaze', async () => {
    const { stdout } = await kingcup('mix', '--lab', '30,40,20', '--shelf', shelfOf(...lake));
    expect(stdout).toMatch(/lake scatters next to nothing: this is a glaze/);
  });
});

describe('transpose', () => {
  test('moves a harmony into reach and keeps its intervals; mix takes what it wrote', async () => {
    const { transposition } = await json('transpose', '--harmony', harmony);
    const { transposed, keyed, alone } = transposition;
    expect(transposed.reached).toBe(true);
    expect(transposed.lost.hueDeg).toBeLessThan(alone.lost.hueDeg + 1);
    expect(keyed.colours).toHaveLength(transposed.colours.length);
    const path = join(folder, 'transposed.json');
    writeFileSync(path, JSON.stringify({ transposition }));
    expect(transposed.colours.length).toBeGreaterThan(0);
    const answers = await mixed('--harmony', path);
    expect(answers).toHaveLength(transposed.colours.length);
    for (const { reachable } of answers) expect(reachable).toBe(true);
  });

  test('a harmony that is reached does not move', async () => {
    const { transposition } = await json('transpose', '--lab', '62,10,24', '--lab', '50,4,10');
    expect(transposition.transposed.move).toEqual({
      lightness: 1,
      shift: 0,
      chroma: 1,
      turnDeg: 0,
    });
    const { stdout } = await kingcup('transpose', '--lab', '62,10,24', '--lab', '50,4,10');
    expect(stdout).toMatch(/Nothing has to move/);
  });

  test.each([
    [[], /Name a colour/],
    [['--harmony', '/nowhere.json'], /cannot be opened/],
    [['--lab', '50,0,0', 'stray'], /stray/],
    [['--lab', '50,0,0', '--only', 'red_earth', '--leave-out', 'red_earth'], /No pigment is left/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('transpose', ...options, '--json'), sentence);
  });
});

describe('fewest', () => {
  test('a curve that falls, and a set that is enough', async () => {
    const { fewest } = await json('fewest', '--harmony', harmony, '--within', '3', '--key');
    expect(fewest.curve.length).toBeGreaterThan(1);
    const means = fewest.curve.map((step: { mean: number }) => step.mean);
    expect(means).toEqual([...means].sort((a: number, b: number) => b - a));
    expect(fewest.enough.pigments).toHaveLength(fewest.enough.count);
    const only = fewest.enough.pigments.flatMap((name: string) => ['--only', name]);
    const answers = await mixed('--harmony', harmony, '--key', ...only);
    expect(answers).toHaveLength(fewest.enough.deltaE00.length);
    for (const [i, one] of answers.entries())
      expect(one.deltaE00).toBeLessThan(fewest.enough.deltaE00[i] + 0.1);
  });

  test('the variants of each colour are mixed too, and what must be in every mixture is', async () => {
    const asked = ['--lab', '62,10,24', '--lab', '50,4,10', '--variants', 'small'];
    const { fewest } = await json('fewest', ...asked, '--must', 'raw_umber');
    expect(fewest.sought).toHaveLength(14);
    expect(fewest.sought.slice(0, 2).map((one: { way: null }) => one.way)).toEqual([null, null]);
    expect(fewest.curve.length).toBeGreaterThan(0);
    for (const { pigments, deltaE00 } of fewest.curve) {
      expect(pigments).toContain('raw_umber');
      expect(deltaE00).toHaveLength(14);
    }
    expect((await kingcup('fewest', ...asked)).stdout).toMatch(/enough: /);
  });

  test('says it in a table too', async () => {
    const { stdout, status } = await kingcup('fewest', '--lab', '50,0,0');
    expect(status).toBe(0);
    expect(stdout).toMatch(/enough: /);
  });

  test.each([
    [[], /Name a colour/],
    [['--lab', '50,0,0', '--within', 'near'], /number from 0/],
    [['--lab', '50,0,0', '--longest', '0'], /1 to 24/],
    [['--lab', '50,0,0', '--variants', 'some'], /small, middle, large/],
    [['--lab', '50,0,0', '--must', 'azurite', '--leave-out', 'azurite'], /left out as well/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('fewest', ...options, '--json'), sentence);
  });
});

describe('add', () => {
  const shelf = starterShelf();
  const right = [
    { pigment: 'lead_white', parts: 6 },
    { pigment: 'yellow_ochre', parts: 3 },
    { pigment: 'raw_umber', parts: 1 },
  ];
  const target = predictColour(ofParts(right), shelf);
  // Twice the ochre went into it.
  const wrong = predictColour(
    ofParts(right.map((p) => (p.pigment === 'yellow_ochre' ? { ...p, parts: 6 } : p))),
    shelf,
  );
  const pile = ['--pile', 'Lead white=6', '--pile', 'yellow_ochre=3', '--pile', 'Raw umber=1'];
  const lab = (colour: readonly number[]) => colour.map((v) => v.toFixed(4)).join(',');

  test('brings a pile with twice the ochre back, and names the slip', async () => {
    const { addition } = await json(
      'add',
      '--lab',
      lab(target),
      ...pile,
      '--came-out',
      lab(wrong),
      '--volume',
      '20',
    );
    expect(addition.slip.pigment).toBe('yellow_ochre');
    expect(addition.slip.factor).toBeCloseTo(2, 1);
    const [first] = addition.options;
    expect(first.add.map((one: Parts[number]) => one.pigment)).toContain('lead_white');
    expect(first.deltaE00).toBeLessThan(1);
    expect(first.add[0].cm3).toBeGreaterThan(0);
    // Added to what is really in the pile it makes what was promised.
    const after = new Map([
      ['lead_white', 6],
      ['yellow_ochre', 6],
      ['raw_umber', 1],
    ]);
    for (const { pigment, parts } of first.add as Parts)
      after.set(pigment, (after.get(pigment) ?? 0) + parts);
    const made = predictColour(
      [...after].map(([pigment, amount]) => ({ pigment, amount })),
      shelf,
    );
    expect(deltaE00(target, made)).toBeLessThan(1);
  });

  test('says that a right pile is right, and when to start again', async () => {
    const same = await kingcup('add', '--lab', lab(target), ...pile, '--came-out', lab(target));
    expect(same.stdout).toMatch(/Add nothing/);
    const black = await kingcup(
      'add',
      '--hex',
      '#f4efe4',
      '--pile',
      'bone_black=1',
      '--came-out',
      '#161616',
    );
    expect(black.status).toBe(0);
    expect(black.stdout).toMatch(/Start again/);
  });

  test.each([
    [['--lab', '50,0,0', '--came-out', '#808080'], /what went into the pile/],
    [['--lab', '50,0,0', '--pile', 'azurite=2'], /--came-out/],
    [
      ['--lab', '50,0,0', '--lab', '60,0,0', '--pile', 'azurite=2', '--came-out', '#808080'],
      /one colour/,
    ],
    [['--lab', '50,0,0', '--pile', 'azurite', '--came-out', '#808080'], /ultramarine=2/],
    [['--lab', '50,0,0', '--pile', 'azurite=two', '--came-out', '#808080'], /number from 0/],
    [['--lab', '50,0,0', '--pile', 'azurite=0', '--came-out', '#808080'], /pile is empty/],
    [['--lab', '50,0,0', '--pile', 'nothing=1', '--came-out', '#808080'], /not on the shelf/],
    [['--lab', '50,0,0', '--pile', 'azurite=1', '--came-out', 'grey'], /hexadecimal/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('add', ...options, '--json'), sentence);
  });
});

test.each(['transpose', 'fewest', 'add'])('%s --help says what it takes', async (verb) => {
  const { status, stdout, stderr } = await kingcup(verb, '--help');
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(new RegExp(`^kingcup ${verb} `));
});
