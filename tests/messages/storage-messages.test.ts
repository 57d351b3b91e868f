import { expect, test } from 'vitest';
import { keepingWords } from '../../src/messages/storage-messages.ts';

test('never promises that the book is safe, and always asks for copies', () => {
  expect(Object.keys(keepingWords)).toEqual(['kept', 'may be cleared', 'unknown']);
  for (const words of Object.values(keepingWords)) {
    expect(words).not.toMatch(/\bsafe|\bnever\b|guarantee/i);
    expect(words.toLowerCase()).toContain('make copies');
  }
});
