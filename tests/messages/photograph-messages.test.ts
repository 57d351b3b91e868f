import { expect, test } from 'vitest';
import { photographRemarkWords } from '../../src/messages/photograph-messages.ts';

test.each<[Parameters<typeof photographRemarkWords>[0], string]>([
  [
    { code: 'tiny-photograph' },
    'The photograph is only a few pixels large, so shares and ladder say little.',
  ],
  [{ code: 'few-pixels' }, 'Only a few pixels are looked at, so shares and ladder say little.'],
  [
    { code: 'blown-out', share: 0.256 },
    '26 % of what is looked at is blown out to white: its colour was lost in the camera.',
  ],
  [
    { code: 'lost-in-black', share: 0.514 },
    '51 % of what is looked at is black: its colour was lost in the dark.',
  ],
  [{ code: 'one-colour' }, 'There is one colour in it.'],
  [
    { code: 'fewer-colours', requested: 5, found: 3 },
    '5 colours were asked for, 3 could be told apart.',
  ],
  [{ code: 'grey' }, 'The photograph is grey throughout.'],
])('a remark on what was gathered: %o', (remark, words) => {
  expect(photographRemarkWords(remark)).toBe(words);
});
