import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectRefusal, kingcup, SAMPLES, scratch } from './run.ts';

const folder = scratch();
const DAY = join(SAMPLES, 'day.json');
const SAMPLE = JSON.parse(readFileSync(DAY, 'utf8'));

describe('sheet', () => {
  test('help tells the form of a day', async () => {
    expect((await kingcup('sheet', '--help')).stdout).toMatch(/kingcup-day/);
  });

  test('in words: everything a morning needs', async () => {
    const { status, stdout, stderr } = await kingcup('sheet', DAY, '--palette', '1');
    expect(status).toBe(0);
    expect(stderr).toBe('');
    for (const words of [
      'Thursday 14 May 2026',
      'Use first',
      'temper, do not grind',
      'lead: slab, knife and rag',
      'Toxic',
      'Oily rags',
      'Bram, Lead white, lot 3: ____',
    ])
      expect(stdout).toContain(words);
  });

  test('as JSON: one document, the same sheets', async () => {
    const { stdout } = await kingcup('sheet', DAY, '--json');
    const { sheets } = JSON.parse(stdout);
    expect(sheets.map(({ number, of }: { number: number; of: number }) => [number, of])).toEqual([
      [1, 2],
      [2, 2],
    ]);
  });

  test('as a page that asks for nothing outside', async () => {
    const { stdout } = await kingcup('sheet', DAY, '--html');
    expect(stdout).toMatch(/^<!doctype html>/);
    expect(stdout.match(/<section class="sheet"/g)).toHaveLength(2);
    expect(stdout).toContain('@page');
    expect(stdout).not.toMatch(/<script|<link|src=|url\(/);
  });

  test('with pupils about nothing toxic is on it, and what has no other mixture is left off', async () => {
    const path = join(folder, 'pupils.json');
    writeFileSync(path, JSON.stringify({ ...SAMPLE, rules: { ...SAMPLE.rules, pupils: true } }));
    const { status, stdout } = await kingcup('sheet', path);
    expect(status).toBe(0);
    expect(stdout).toContain('Nothing toxic');
    expect(stdout).not.toMatch(/lead white|lead-tin|vermilion/i);
  });

  test('a mixture that was deleted: the rest of the day is printed', async () => {
    const path = join(folder, 'gone.json');
    const [water, ...rest] = SAMPLE.passages;
    const piles = water.piles.map((pile: object, i: number) =>
      i === 0 ? { ...pile, parts: null } : pile,
    );
    writeFileSync(path, JSON.stringify({ ...SAMPLE, passages: [{ ...water, piles }, ...rest] }));
    expect((await kingcup('sheet', path)).stdout).toMatch(
      /“foam in sun” .* is left off: its mixture/,
    );
  });

  test.each([
    ['nothing', [], /Name a day/],
    ['two forms at once', [DAY, '--html', '--json'], /one of/],
    ['a palette that is not there', [DAY, '--palette', '0'], /from 1 to 2/],
  ])('%s is refused with a sentence', async (_, args, sentence) => {
    expectRefusal(await kingcup('sheet', ...args), sentence);
  });
});
