import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { main, report } from '../../src/cli/watercolour-accuracy.ts';
import { readMixtures, readWashes } from '../../src/cli/watercolour-data.ts';

// The form of the published files, with invented numbers.
const folder = mkdtempSync(join(tmpdir(), 'washes-'));
afterAll(() => rmSync(folder, { recursive: true }));
let count = 0;
function file(text: string): string {
  const path = join(folder, `file-${count++}.csv`);
  writeFileSync(path, text);
  return path;
}
const nm = Array.from({ length: 34 }, (_, i) => 400 + 10 * i);
const row = (head: string, R: (nm: number) => number) =>
  `${head},${nm.map((w) => R(w).toFixed(4)).join(',')}`;
const red = (depth: number) => (w: number) => 0.05 + (w > 590 ? 0.7 : 0.3 * Math.exp(-depth));
const blue = (depth: number) => (w: number) => 0.05 + (w < 500 ? 0.5 : 0.3 * Math.exp(-depth));
const washes = (more = '') =>
  `# invented
pigment,amount_ml,quantity,${nm.join(',')}
${row('Paper,,R', () => 0.85)}
${[1, 2, 4].map((d) => row(`Red,0.0${d},R`, red(d))).join('\n')}
${[1, 2, 4].map((d) => row(`Blue,0.0${d},R`, blue(d))).join('\n')}
${row('Red,0.01,T', () => 0.3)}
${more}`;
const heading = `pigment_a,amount_a_ml,pigment_b,amount_b_ml,${nm.join(',')}`;
const mixtures = (...rows: string[]) => file([heading, ...rows].join('\n'));
const dark = () => 0.08;

function run(...args: string[]): { code: number; out: string; err: string } {
  const out = vi.spyOn(console, 'log').mockImplementation(() => {});
  const err = vi.spyOn(console, 'error').mockImplementation(() => {});
  const code = main(['node', 'watercolours', ...args]);
  const said = (spy: typeof out) => spy.mock.calls.map((call) => String(call[0])).join('\n');
  const result = { code, out: said(out), err: said(err) };
  out.mockRestore();
  err.mockRestore();
  return result;
}

test('files are read: the grid carried on flat to 380, transmittances left out, pairs named', () => {
  const data = readWashes(file(washes()));
  expect(data.pigments).toEqual(['Red', 'Blue']);
  expect(data.singles).toHaveLength(6);
  expect(data.paper[0]).toBe(0.85);
  const both = mixtures(row('Red,0.01,Blue,0.02', dark), row('Blue,0.02,Red,0.01', dark));
  const read = readMixtures(both, data.pigments);
  expect(read.map(({ pair }) => pair)).toEqual(['Blue and Red', 'Blue and Red']);
  expect(Array.from(read[0]!.amounts)).toEqual([0.01, 0.02]);
});

test('one file fitted, another scored', () => {
  const seen = mixtures(row('Red,0.01,Blue,0.02', dark), row('Red,0.02,Blue,0.01', dark));
  const other = mixtures(row('Red,0.02,Blue,0.02', dark));
  const request = { washes: file(washes()), fit: [seen], score: [other], folds: 5, seed: 1 };
  const { text, within } = report(request);
  expect(text).toContain('0 pairs unseen, 1 seen in the fit');
  expect(text).toContain('of 1 mixtures');
  expect(within).toBe(1);
  const said = run('--washes', request.washes, '--fit', seen, '--fit', seen, '--score', other);
  expect(said).toMatchObject({ code: 0, err: '' });
  expect(said.out).toContain('Mixtures to fit: 4 of 1 pairs');
});

test('what cannot be read is said in one sentence', () => {
  const good = file(washes());
  const refuse = (sentence: string, ...args: string[]) => {
    const { code, out, err } = run('--washes', good, ...args);
    expect({ code, out, err }).toEqual({ code: 1, out: '', err: sentence });
  };
  const fitting = (...rows: string[]) => ['--fit', mixtures(...rows)];
  const name = () => `file-${count - 1}.csv`;
  refuse('There is no file nowhere.csv.', '--fit', 'nowhere.csv');
  const percent = fitting(row('Red,0.01,Blue,0.02', () => 8));
  refuse(
    `${name()}, row 1: a reflectance of 8, where fractions from 0 to 1 are expected.`,
    ...percent,
  );
  const stranger = fitting(row('Red,0.01,Green,0.02', dark));
  refuse(`${name()}, row 1: Green has no wash.`, ...stranger);
  const short = fitting('Red,0.01,Blue,0.02,0.1,0.1');
  refuse(`${name()}, row 1: no reflectance at 420 nm.`, ...short);
  const negative = fitting(row('Red,-0.01,Blue,0.02', dark));
  refuse(`${name()}, row 1: an amount of -0.01.`, ...negative);
  const none = fitting(row('Red,0,Blue,0', dark));
  refuse(`${name()}, row 1: a mixture of no paint.`, ...none);
  const empty = fitting();
  refuse(`${name()} has no mixtures.`, ...empty);
  const headless = ['--fit', file('a,b\n1,2')];
  refuse(`${name()} has no column 400.`, ...headless);
  const few = fitting(row('Red,0.01,Blue,0.02', dark));
  refuse('5 folds need as many pigment pairs, and there are 1.', ...few);
  refuse('--folds is a whole number from 2, not one.', ...few, '--folds', 'one');
  const bare = file(washes().replace('Paper', 'Card'));
  expect(run('--washes', bare, ...few).err).toMatch(/has no row of bare Paper\.$/);
  expect(run('--unknown').err).toMatch(
    /^Unknown option '--unknown'; --help tells what there is\.$/,
  );
});

test('help tells what there is', () => {
  const { code, out } = run('--help');
  expect(code).toBe(0);
  for (const option of ['--fit', '--score', '--washes', '--folds', '--seed'])
    expect(out).toContain(option);
});
