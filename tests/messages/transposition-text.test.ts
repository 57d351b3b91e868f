import { expect, test } from 'vitest';
import { IDENTITY_MOVE } from '../../src/harmony/harmony-move.ts';
import { moveWords } from '../../src/messages/transposition-text.ts';

test('what stands still is said to', () => {
  expect(moveWords(IDENTITY_MOVE)).toBe('Nothing has to move: the shelf reaches every colour.');
});

test.each([
  [{ chroma: 0.6 }, /chroma comes down to three fifths\. Hues stay/],
  [{ lightness: 0.5 }, /light and dark is drawn in to a half/],
  [{ shift: 2 }, /a little lighter/],
  [{ shift: -7 }, /everything is deeper/],
  [{ turnDeg: 4 }, /by 4 degrees, reds towards yellow/],
  [{ turnDeg: -8 }, /by 8 degrees, yellows towards red/],
])('%j in words', (change, words) => {
  expect(moveWords({ ...IDENTITY_MOVE, ...change })).toMatch(words);
});

test('several at once make one sentence', () => {
  const words = moveWords({ lightness: 0.9, shift: -3, chroma: 0.75, turnDeg: 0 });
  expect(words).toMatch(/^All together: .*, .* and .*\. Hues stay as they are\.$/);
});
