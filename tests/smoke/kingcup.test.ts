import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { expectRefusal, kingcup as fromSource, SAMPLES, scratch } from '../cli/run.ts';
import { BUNDLE, freshBundle, kingcup } from './built.ts';

const folder = scratch();
const file = (name: string) => join(folder, name);
const NAMES = ['rowan-branch', 'jay-feather', 'lichened-wall'];
const PHOTOS = NAMES.map((name) => file(`${name}.png`));

beforeEach(freshBundle);
beforeAll(async () => {
  for (const [i, name] of NAMES.entries())
    await sharp(join(SAMPLES, `${name}.jpg`))
      .resize(200)
      .png()
      .toFile(PHOTOS[i]!);
});

/** A document, its newline, and nothing else. */
function oneDocument(stdout: string) {
  expect(stdout).toMatch(/^\{[^\n]*\}\n$/);
  return JSON.parse(stdout);
}

describe('the bundled command line', () => {
  test('--help ends with 0 and writes to standard output alone', () => {
    const { status, stdout, stderr } = kingcup(['--help']);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Kingcup: /);
    expect(stdout).toMatch(/^ {2}gather /m);
  });

  test('an unknown verb ends with 1 and one sentence on standard error', () => {
    const outcome = kingcup(['squint']);
    expectRefusal(outcome, /^Kingcup has no verb “squint”\. .*\n$/);
    expect(outcome.status).toBe(1);
  });

  test('what a verb refuses ends with 1 and a sentence', () => {
    const outcome = kingcup(['gather', file('missing.jpg'), '--json']);
    expectRefusal(outcome, /^missing\.jpg: .*no such file.*\n$/);
    expect(outcome.status).toBe(1);
  });

  test('remarks go to standard error, the document to standard output', () => {
    const shelf = file('no-white.csv');
    const bands = Array.from({ length: 36 }, (_, i) => 380 + 10 * i);
    const row = (kind: string, value: number) => `1,Blue,${kind},${bands.map(() => value)}`;
    const head = `# surface: 0.03,0.65\n# basis: volume\nindex,colour,coefficient,${bands}`;
    writeFileSync(shelf, `${[head, row('K', 0.5), row('S', 0.4)].join('\n')}\n`);
    const { status, stdout, stderr } = kingcup([
      ...['mix', '--hex', '#808080', '--shelf', shelf, '--json'],
    ]);
    expect(status).toBe(0);
    expect(stderr).toMatch(/no white/i);
    expect(oneDocument(stdout).mixtures[0].recipe).toEqual([{ pigment: 'Blue', share: 1 }]);
  });

  test('several photographs are gathered in threads, and come in order', async () => {
    const threads = file('threads.txt');
    writeFileSync(threads, '');
    const preload = file('preload.cjs');
    writeFileSync(
      preload,
      `const { isMainThread, threadId } = require('node:worker_threads');
       if (!isMainThread) require('node:fs').appendFileSync(${JSON.stringify(threads)}, threadId + '\\n');`,
    );
    const args = ['gather', ...PHOTOS, '--json'];
    const { status, stdout, stderr } = kingcup(args, { NODE_OPTIONS: `--require=${preload}` });
    expect(status, stderr).toBe(0);
    expect(readFileSync(threads, 'utf8')).toMatch(/^\d+\n/);
    expect(stderr.match(/^\d of 3: /gm)).toEqual(['1 of 3: ', '2 of 3: ', '3 of 3: ']);
    const { photos } = oneDocument(stdout);
    expect(photos.map(({ photo }: { photo: string }) => photo)).toEqual(PHOTOS);
    expect(stdout).toBe((await fromSource(...args)).stdout);
  });

  test('one command reads what another pipes to it', () => {
    const { status, stdout, stderr } = spawnSync(
      'sh',
      [
        ...['-c', '"$0" "$1" gather "$2" --json | "$0" "$1" mix --harmony /dev/stdin --json'],
        ...[process.execPath, BUNDLE, PHOTOS[0]!],
      ],
      { encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(oneDocument(stdout).mixtures.length).toBeGreaterThan(1);
  });

  test('a reader that closes the pipe early is no failure', async () => {
    const run = spawn(process.execPath, [BUNDLE, 'shelf', 'list', '--all', '--json']);
    run.stdout.destroy();
    let stderr = '';
    run.stderr.on('data', (data) => {
      stderr += data;
    });
    const [status] = await once(run, 'close');
    expect([status, stderr]).toEqual([0, '']);
  });

  test.each([
    [['gather', PHOTOS[1]!, '--json']],
    [['mix', '--lab', '62,18,34', '--judge']],
    [['transpose', '--lab', '62,10,24', '--lab', '50,4,10', '--json']],
    [['fewest', '--lab', '50,0,0']],
    [['add', '--hex', '#f4efe4', '--pile', 'bone_black=1', '--came-out', '#161616']],
    [['vary', '--hex', '#9a5b41', '--way', 'duller']],
    [['drapery', '--hex', '#a0503c', '--only', 'lead_white,vermilion,raw_umber', '--svg']],
    [['palette', join(SAMPLES, 'day.json')]],
    [['sheet', join(SAMPLES, 'day.json')]],
    [['shelf', 'show', 'vermilion', '--json']],
    [['shelf', 'card', '--paints', 'smalt']],
  ])('%j writes what the source writes', async (args) => {
    const { status, stdout, stderr } = kingcup(args);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout.length).toBeGreaterThan(100);
    expect(stdout).toBe((await fromSource(...args)).stdout);
  });

  test('the page of a morning sheet carries its style', () => {
    const { status, stdout } = kingcup(['sheet', join(SAMPLES, 'day.json'), '--html']);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^<!doctype html>/);
    expect(stdout).toContain('@page');
  });
});
