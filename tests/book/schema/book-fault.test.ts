import { describe, expect, test } from 'vitest';
import { faultOf } from '../../../src/book/schema/book-fault.ts';

const dom = (name: string, message = '') => new DOMException(message, name);

describe('what a browser says', () => {
  // Names and messages as reported for Chromium, Firefox and WebKit.
  test.each([
    [dom('QuotaExceededError'), 'disk-full'],
    [dom('NS_ERROR_DOM_INDEXEDDB_QUOTA_ERR'), 'disk-full'],
    [dom('UnknownError', 'Encountered full disk while opening backing store'), 'disk-full'],
    [dom('UnknownError', 'Connection to Indexed Database server lost.'), 'lost-connection'],
    [dom('InvalidStateError', 'The database connection is closing.'), 'lost-connection'],
    [dom('AbortError'), 'not-written'],
    [dom('DataError', 'x'), 'not-written'],
    ['nonsense', 'not-written'],
  ])('while writing, %s', (error, code) => {
    expect(faultOf(error, 'not-written').code).toBe(code);
  });

  test.each([
    [dom('VersionError'), 'newer-book'],
    [dom('SecurityError'), 'no-storage'],
    // Firefox's private windows of old.
    [dom('InvalidStateError', 'A mutation operation was attempted'), 'no-storage'],
    [new ReferenceError('indexedDB is not defined'), 'no-storage'],
    [dom('UnknownError', 'Internal error.'), 'not-opened'],
  ])('while opening, %s', (error, code) => {
    expect(faultOf(error, 'not-opened').code).toBe(code);
  });
});
