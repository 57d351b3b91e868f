import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { expectRefusal, kingcup, scratch } from './run.ts';

const folder = scratch();
const HARMONY = {
  photos: [
    {
      colours: [
        { name: 'moss', lab: [48, -8, 24], share: 0.7, ladder: [] },
        { name: 'berry', lab: [42, 38, 20], share: 0.05, ladder: [] },
      ],
    },
  ],
};

describe('vary', () => {
  test('one document, every way of every colour, with its own pile and words', async () => {
    const { status, stdout, stderr } = await kingcup('vary', '--hex', '#9a5b41', '--json');
    expect(status, stderr).toBe(0);
    const { variants, relations } = JSON.parse(stdout);
    expect(relations).toBeNull();
    expect(variants.map(({ way }: { way: string }) => way)).toEqual([
      'warmer',
      'cooler',
      'lighter',
      'deeper',
      'brighter',
      'duller',
    ]);
    const granted = variants.map((one: { granted: string }) => one.granted);
    expect(new Set(granted)).toEqual(new Set(['whole', 'part', 'nothing']));
    for (const one of variants) {
      expect(one.amount).toBe('middle');
      expect(['whole', 'part', 'nothing']).toContain(one.granted);
      expect(deltaE00(one.wish, one.lab)).toBeCloseTo(one.deltaE00, 6);
      expect(one.pile).not.toBe('');
      if (one.granted === 'whole') expect(one.limit).toBe('');
      else expect(one.limit).not.toBe('');
    }
  });

  test('a harmony is told by its names and shares', async () => {
    const path = join(folder, 'harmony.json');
    writeFileSync(path, JSON.stringify(HARMONY));
    const asked = ['vary', '--harmony', path, '--way', 'duller', '--amount', 'small'];
    const { variants, relations } = JSON.parse((await kingcup(...asked, '--json')).stdout);
    expect(variants).toHaveLength(2);
    expect(relations.words).toMatch(/^The moss is dominant/);
    expect(relations.pairs[0].period[0].words).toMatch(/Green and red: held|Black|yellow/i);
    expect((await kingcup(...asked)).stdout).toMatch(/two-colour score/);
  });

  test.each([
    [['--hex', '#808080', '--way', 'nicer'], /warmer, cooler/],
    [['--hex', '#808080', '--amount', 'huge'], /small, middle, large/],
    [[], /Name a colour/],
    [['--harmony', '/nowhere.json'], /cannot be opened/],
  ])('refuses %j with a sentence', async (options, sentence) => {
    expectRefusal(await kingcup('vary', ...options, '--json'), sentence);
  });
});
