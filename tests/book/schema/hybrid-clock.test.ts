import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  CLOCK_FORM,
  compareClocks,
  later,
  msOf,
  START,
  tick,
} from '../../../src/book/schema/hybrid-clock.ts';
import { NOON } from '../made.ts';

// The two rules of S. Kulkarni et al., "Logical Physical Clocks" (OPODIS 2014), for a local event:
// the clock follows the wall while that is ahead, and counts while it is not.
test('follows the wall, and counts where the wall stands still or was set back', () => {
  const first = tick(START, NOON);
  expect([msOf(first), first.slice(16)]).toEqual([NOON, '00000']);
  const still = tick(first, NOON);
  expect([msOf(still), still.slice(16)]).toEqual([NOON, '00001']);
  const back = tick(still, NOON - 86_400_000);
  expect([msOf(back), back.slice(16)]).toEqual([NOON, '00002']);
  const on = tick(back, NOON + 0.7);
  expect(on.slice(16)).toBe('00003');
  expect(tick(on, NOON + 1)).toBe(tick(START, NOON + 1));
});

test('always rises, whatever the wall does, and its text compares as it does', () => {
  const walls = fc.array(
    fc.oneof(
      fc.integer({ min: -1e6, max: 1e6 }).map((ms) => NOON + ms),
      fc.double(),
      fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY, 8.64e15),
    ),
    { maxLength: 60 },
  );
  fc.assert(
    fc.property(walls, (all) => {
      let last = START;
      for (const wall of all) {
        const next = tick(last, wall);
        expect(next).toMatch(CLOCK_FORM);
        expect(compareClocks(next, last)).toBe(1);
        expect(later(last, next)).toBe(next);
        last = next;
      }
    }),
    { numRuns: 200, seed: 4 },
  );
});

test('goes on a millisecond further when it has counted to the end', () => {
  const full = `${tick(START, NOON).slice(0, 15)}.99999`;
  expect(tick(full, NOON)).toBe(tick(START, NOON + 1));
});

test('refuses what is no clock', () => {
  expect(() => tick('yesterday', NOON)).toThrow(RangeError);
});
