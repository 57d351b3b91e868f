import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { ofParts, predict } from '../../src/mixture/predict.ts';
import { starterShelf } from '../../src/pigment/starter.ts';
import { expectRefusal, kingcup, SAMPLES, scratch } from './run.ts';

const folder = scratch();
const harmony = join(folder, 'harmony.json');
writeFileSync(harmony, kingcup('gather', join(SAMPLES, 'rowan-branch.jpg'), '--json').stdout);

function json(...args: string[]) {
  const { status, stdout, stderr } = kingcup(...args, '--json');
  expect(status, stderr).toBe(0);
  return JSON.parse(stdout);
}
const mixed = (...args: string[]) => json('mix', ...args).mixtures;
type Parts = { pigment: string; parts: number }[];

describe('mix under a wish', () => {
  test('leaves out, must hold, without black, without danger', () => {
    const names = (...args: string[]) =>
      mixed('--lab', '62,18,34', ...args).flatMap(
        (one: { parts: Parts; simplest: { parts: Parts } }) =>
          [...one.parts, ...one.simplest.parts].map((part) => part.pigment),
      );
    expect(names('--leave-out', 'Yellow ochre')).not.toContain('yellow_ochre');
    expect(names('--must', 'raw_umber')).toContain('raw_umber');
    expect(names('--hazard', 'toxic')).not.toContain('lead_white');
    const only = ['--only', 'lead_white', '--only', 'red_earth', '--only', 'raw sienna'];
    for (const name of names(...only))
      expect(['lead_white', 'red_earth', 'raw_sienna']).toContain(name);
  });

  test('coarse parts are twelve in all', () => {
    const [{ parts }] = mixed('--lab', '62,18,34', '--coarse');
    expect(parts.reduce((sum: number, p: Parts[number]) => sum + p.parts, 0)).toBeLessThanOrEqual(
      12,
    );
  });

  test('lightness kept first comes nearer in lightness', () => {
    const away = (keep: string) =>
      Math.abs(mixed('--lab', '60,70,50', '--keep', keep)[0].lab[0] - 60);
    expect(away('lightness')).toBeLessThan(away('nearest') + 0.01);
  });

  test('the promised form has nothing more until it is asked for', () => {
    const keys = Object.keys(mixed('--lab', '46,-22,31')[0]);
    expect(keys).not.toContain('judgement');
    const [{ judgement, lacking }] = mixed('--lab', '46,-60,31', '--judge', '--lacking');
    expect(judgement.slip.deltaE00).toBeGreaterThanOrEqual(0);
    expect(Array.isArray(lacking)).toBe(true);
  });

  test('out of reach is told in plain words', () => {
    expect(kingcup('mix', '--lab', '60,80,60').stdout).toMatch(/Out of reach: .* on the shelf/);
  });

  test.each([
    [['--leave-out', 'unobtainium'], /“unobtainium” is not on the shelf/],
    [['--must', 'azurite', '--leave-out', 'azurite'], /Azurite is asked for .* left out as well/],
    [['--must', 'azurite', '--must', 'malachite', '--most', '1'], /2 pigments .* at most 1/],
    [['--must', 'bone_black', '--no-black'], /left out as well/],
    [['--keep', 'soul'], /nearest, hue or lightness/],
    [['--hazard', 'some'], /caution, toxic or very-toxic/],
  ])('refuses %j with a sentence', (options, sentence) => {
    expectRefusal(kingcup('mix', '--hex', '#808080', ...options, '--json'), sentence);
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

  test.each(['mix', 'transpose', 'fewest', 'vary'])('%s answers with a remark', (verb) => {
    const shelf = shelfOf(...twins, ...lake);
    const { status, stdout, stderr } = kingcup(verb, '--lab', '60,40,20', '--shelf', shelf);
    expect(status, stderr).toBe(0);
    expect(stderr).toMatch(/no white/i);
    expect(stdout).not.toMatch(/NaN|undefined|red too.*red |red .*red too/);
  });

  test('a lake alone is called a glaze', () => {
    const { stdout } = kingcup('mix', '--lab', '30,40,20', '--shelf', shelfOf(...lake));
    expect(stdout).toMatch(/lake scatters next to nothing: this is a glaze/);
  });
});

describe('transpose', () => {
  test('moves a harmony into reach and keeps its intervals; mix takes what it wrote', () => {
    const { transposition } = json('transpose', '--harmony', harmony);
    const { transposed, keyed, alone } = transposition;
    expect(transposed.reached).toBe(true);
    expect(transposed.lost.hueDeg).toBeLessThan(alone.lost.hueDeg + 1);
    expect(keyed.colours).toHaveLength(transposed.colours.length);
    const path = join(folder, 'transposed.json');
    writeFileSync(path, JSON.stringify({ transposition }));
    const answers = mixed('--harmony', path);
    expect(answers).toHaveLength(transposed.colours.length);
    for (const { reachable } of answers) expect(reachable).toBe(true);
  });

  test('a harmony that is reached does not move', () => {
    const { transposition } = json('transpose', '--lab', '62,10,24', '--lab', '50,4,10');
    expect(transposition.transposed.move).toEqual({
      lightness: 1,
      shift: 0,
      chroma: 1,
      turnDeg: 0,
    });
    const { stdout } = kingcup('transpose', '--lab', '62,10,24', '--lab', '50,4,10');
    expect(stdout).toMatch(/Nothing has to move/);
  });

  test.each([
    [[], /Name a colour/],
    [['--harmony', '/nowhere.json'], /cannot be opened/],
    [['--lab', '50,0,0', 'stray'], /stray/],
    [['--lab', '50,0,0', '--only', 'red_earth', '--leave-out', 'red_earth'], /No pigment is left/],
  ])('refuses %j with a sentence', (options, sentence) => {
    expectRefusal(kingcup('transpose', ...options, '--json'), sentence);
  });
});

describe('fewest', () => {
  test('a curve that falls, and a set that is enough', () => {
    const { fewest } = json('fewest', '--harmony', harmony, '--within', '3', '--key');
    const means = fewest.curve.map((step: { mean: number }) => step.mean);
    expect(means).toEqual([...means].sort((a: number, b: number) => b - a));
    expect(fewest.enough.pigments).toHaveLength(fewest.enough.count);
    const only = fewest.enough.pigments.flatMap((name: string) => ['--only', name]);
    for (const [i, one] of mixed('--harmony', harmony, '--key', ...only).entries())
      expect(one.deltaE00).toBeLessThan(fewest.enough.deltaE00[i] + 0.1);
  });

  test('the variants of each colour are mixed too, and what must be in every mixture is', () => {
    const asked = ['--lab', '62,10,24', '--lab', '50,4,10', '--variants', 'small'];
    const { fewest } = json('fewest', ...asked, '--must', 'raw_umber');
    expect(fewest.sought).toHaveLength(14);
    expect(fewest.sought.slice(0, 2).map((one: { way: null }) => one.way)).toEqual([null, null]);
    for (const { pigments, deltaE00 } of fewest.curve) {
      expect(pigments).toContain('raw_umber');
      expect(deltaE00).toHaveLength(14);
    }
    expect(kingcup('fewest', ...asked).stdout).toMatch(/enough: /);
  });

  test('says it in a table too', () => {
    const { stdout, status } = kingcup('fewest', '--lab', '50,0,0');
    expect(status).toBe(0);
    expect(stdout).toMatch(/enough: /);
  });

  test.each([
    [[], /Name a colour/],
    [['--lab', '50,0,0', '--within', 'near'], /number from 0/],
    [['--lab', '50,0,0', '--longest', '0'], /1 to 24/],
    [['--lab', '50,0,0', '--variants', 'some'], /small, middle, large/],
    [['--lab', '50,0,0', '--must', 'azurite', '--leave-out', 'azurite'], /left out as well/],
  ])('refuses %j with a sentence', (options, sentence) => {
    expectRefusal(kingcup('fewest', ...options, '--json'), sentence);
  });
});

describe('add', () => {
  const shelf = starterShelf();
  const right = [
    { pigment: 'lead_white', parts: 6 },
    { pigment: 'yellow_ochre', parts: 3 },
    { pigment: 'raw_umber', parts: 1 },
  ];
  const target = predict(ofParts(right), shelf);
  // Twice the ochre went into it.
  const wrong = predict(
    ofParts(right.map((p) => (p.pigment === 'yellow_ochre' ? { ...p, parts: 6 } : p))),
    shelf,
  );
  const pile = ['--pile', 'Lead white=6', '--pile', 'yellow_ochre=3', '--pile', 'Raw umber=1'];
  const lab = (colour: readonly number[]) => colour.map((v) => v.toFixed(4)).join(',');

  test('brings a pile with twice the ochre back, and names the slip', () => {
    const { addition } = json(
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
    const made = predict(
      [...after].map(([pigment, amount]) => ({ pigment, amount })),
      shelf,
    );
    expect(deltaE00(target, made)).toBeLessThan(1);
  });

  test('says that a right pile is right, and when to start again', () => {
    const same = kingcup('add', '--lab', lab(target), ...pile, '--came-out', lab(target));
    expect(same.stdout).toMatch(/Add nothing/);
    const black = kingcup(
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
  ])('refuses %j with a sentence', (options, sentence) => {
    expectRefusal(kingcup('add', ...options, '--json'), sentence);
  });
});

test.each(['transpose', 'fewest', 'add'])('%s --help says what it takes', (verb) => {
  const { status, stdout, stderr } = kingcup(verb, '--help');
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(new RegExp(`^kingcup ${verb} `));
});
