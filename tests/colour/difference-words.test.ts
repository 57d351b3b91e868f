import { expect, test } from 'vitest';
import { changeWords, differenceWords } from '../../src/colour/change-words.ts';

// By design, after common practice in colour matching: up to 1 nobody sees it, up to 3 a trained eye does.
test.each([
  [0, 'none seen'],
  [1, 'none seen'],
  [1.01, 'a trained eye sees it'],
  [3, 'a trained eye sees it'],
  [3.01, 'plain'],
  [4, 'plain'],
  [40, 'plain'],
] as const)('a difference of %d: %s', (deltaE, words) => {
  expect(differenceWords(deltaE)).toBe(words);
});

test('lighter, darker, brighter and duller are told from the first to the second', () => {
  expect(changeWords([40, 30, 20], [50, 30, 20])).toMatch(/^lighter/);
  expect(changeWords([50, 30, 20], [40, 30, 20])).toMatch(/^darker/);
  expect(changeWords([50, 15, 10], [50, 30, 20])).toBe('brighter');
  expect(changeWords([50, 30, 20], [50, 15, 10])).toBe('duller');
});
