import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { expectRefusal, kingcup, scratch } from './run.ts';

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
  test('one document, every way of every colour, with its own pile and words', () => {
    const { status, stdout, stderr } = kingcup('vary', '--hex', '#9a5b41', '--json');
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
    for (const one of variants) {
      expect(one.amount).toBe('middle');
      expect(['whole', 'part', 'nothing']).toContain(one.granted);
      expect(deltaE00(one.wish, one.lab)).toBeCloseTo(one.deltaE00, 6);
      expect(one.pile).not.toBe('');
      if (one.granted !== 'whole') expect(one.limit).not.toBe('');
    }
  });

  test('a harmony is told by its names and shares', () => {
    const path = join(scratch(), 'harmony.json');
    writeFileSync(path, JSON.stringify(HARMONY));
    const asked = ['vary', '--harmony', path, '--way', 'duller', '--amount', 'small'];
    const { variants, relations } = JSON.parse(kingcup(...asked, '--json').stdout);
    expect(variants).toHaveLength(2);
    expect(relations.words).toMatch(/^The moss is dominant/);
    expect(relations.pairs[0].period[0].words).toMatch(/Green and red: held|Black|yellow/i);
    expect(kingcup(...asked).stdout).toMatch(/two-colour score/);
  });

  test.each([
    [['--hex', '#808080', '--way', 'nicer'], /warmer, cooler/],
    [['--hex', '#808080', '--amount', 'huge'], /small, middle, large/],
    [[], /Name a colour/],
    [['--harmony', '/nowhere.json'], /cannot be opened/],
  ])('refuses %j with a sentence', (options, sentence) => {
    expectRefusal(kingcup('vary', ...options, '--json'), sentence);
  });
});
