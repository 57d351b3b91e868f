import { expect, test } from 'vitest';
import {
  copyIsDue,
  requestPersistence,
  roomOf,
} from '../../../src/book/store/persistent-storage.ts';

test('asks once, and says what the browser answered', async () => {
  let asked = 0;
  const persist = async () => {
    asked++;
    return false;
  };
  expect(await requestPersistence({ persisted: async () => true, persist })).toBe('kept');
  expect(asked).toBe(0);
  expect(await requestPersistence({ persisted: async () => false, persist })).toBe(
    'may be cleared',
  );
  expect(await requestPersistence({ persist: async () => true })).toBe('kept');
  expect(await requestPersistence({})).toBe('unknown');
  expect(await requestPersistence(undefined)).toBe('unknown');
  const refuses = () => Promise.reject(new TypeError('insecure'));
  expect(await requestPersistence({ persisted: refuses })).toBe('unknown');
});

test('says how much room is left where the browser tells', async () => {
  expect(await roomOf({ estimate: async () => ({ usage: 30, quota: 100 }) })).toEqual({
    used: 30,
    left: 70,
  });
  expect(await roomOf({ estimate: async () => ({}) })).toBeNull();
  expect(await roomOf(undefined)).toBeNull();
});

test('a copy is due when much has changed, or anything for a week', () => {
  const now = Date.UTC(2031, 4, 17);
  const daysAgo = (days: number) => new Date(now - days * 86_400_000).toISOString();
  expect(copyIsDue({ last: null, changed: 0 }, now)).toBe(false);
  expect(copyIsDue({ last: null, changed: 3 }, now)).toBe(false);
  expect(copyIsDue({ last: null, changed: 20 }, now)).toBe(true);
  expect(copyIsDue({ last: daysAgo(1), changed: 19 }, now)).toBe(false);
  expect(copyIsDue({ last: daysAgo(8), changed: 1 }, now)).toBe(true);
  expect(copyIsDue({ last: daysAgo(80), changed: 0 }, now)).toBe(false);
});
