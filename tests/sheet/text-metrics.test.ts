import { describe, expect, test } from 'vitest';
import { linesOf, widthOf } from '../../src/sheet/text-metrics.ts';

describe('how wide words are', () => {
  // Advance widths of Helvetica and Arial: five hundred and fifty-six thousandths of an em for a figure.
  test('ten figures are 5.56 em, and a little for other faces', () => {
    const em = widthOf({ text: '0123456789' });
    expect(em).toBeGreaterThanOrEqual(5.56);
    expect(em).toBeLessThan(5.56 * 1.03);
  });
  test('bold is wider, small is narrower, accents cost nothing', () => {
    const plain = widthOf({ text: 'verdigris' });
    expect(widthOf({ text: 'verdigris', bold: true })).toBeGreaterThan(plain);
    expect(widthOf({ text: 'verdigris', size: 0.5 })).toBeCloseTo(plain / 2, 9);
    expect(widthOf({ text: 'vérdigrïs' })).toBeCloseTo(plain, 9);
  });
});

describe('how many lines they take', () => {
  const words = 'one two three four five six';
  test('none for nothing, one where all have room', () => {
    expect(linesOf([{ text: '' }], 10)).toBe(0);
    expect(linesOf([{ text: words }], 100)).toBe(1);
  });
  test('they break between words, and after hyphens', () => {
    const wide = widthOf({ text: 'three four' });
    expect(linesOf([{ text: words }], wide + 1e-9)).toBe(3);
    expect(linesOf([{ text: 'lead-tin' }], widthOf({ text: 'lead-' }) + 1e-9)).toBe(2);
  });
  test('runs of one line share it', () => {
    const wide = widthOf({ text: 'one two' });
    expect(linesOf([{ text: 'one' }, { text: 'two' }], wide + 1e-9)).toBe(1);
  });
  test('a word wider than its line is broken within', () => {
    expect(linesOf([{ text: 'm'.repeat(30) }], widthOf({ text: 'm'.repeat(10) }) + 1e-9)).toBe(3);
  });
});
