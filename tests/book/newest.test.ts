import { expect, test } from 'vitest';
import { mergeBooks } from '../../src/book/merge/merge-books.ts';
import { deleted, nextVersionMetadata, purged } from '../../src/book/merge/next-version.ts';
import { START } from '../../src/book/schema/hybrid-clock.ts';
import type { AnyRecord } from '../../src/book/schema/record.ts';
import { harmonyBodyOf, NOON } from './made.ts';

/** A version of one entry, written on a device so many minutes after noon. */
function version(device: string, minutes: number, name: string, over: AnyRecord[] = []): AnyRecord {
  const marks = nextVersionMetadata(device, START, NOON + 60_000 * minutes, over);
  const created = new Date(NOON).toISOString();
  return { id: 'lane', kind: 'harmony', created, ...marks, body: harmonyBodyOf(name) };
}
const nameOf = ({ body }: AnyRecord) => (body as { name: string } | null)?.name;
const first = version('device-one', 0, 'first');
const tablet = version('device-one', 10, 'of the tablet', [first]);
const phone = version('device-two', 5, 'of the phone', [first]);

test.each([
  ['one way', [tablet], [phone]],
  ['the other way', [phone], [tablet]],
])(
  'two devices changed an entry: the newer stands, the older is kept beside it (%s)',
  (_, x, y) => {
    const merged = mergeBooks(x, y);
    expect(merged).toHaveLength(2);
    expect(nameOf(merged.find(({ id }) => id === 'lane')!)).toBe('of the tablet');
    const beside = merged.find(({ id }) => id !== 'lane')!;
    expect(nameOf(beside)).toBe('of the phone');
    expect(beside.conflict?.of).toBe('lane');
  },
);

test('a version made in knowledge of another replaces it, whatever the clocks say', () => {
  // The phone's clock is an hour slow, but it had the tablet's version before it.
  const slow = version('device-two', -50, 'corrected', [first, tablet]);
  for (const merged of [mergeBooks([tablet], [slow]), mergeBooks([slow], [tablet])])
    expect(merged.map(nameOf)).toEqual(['corrected']);
});

test('what was deleted for good stays so when an older copy comes back', () => {
  const marks = nextVersionMetadata('device-one', tablet.clock, NOON + 3_600_000, [tablet]);
  const gone = purged(deleted(tablet, marks));
  for (const older of [first, tablet, deleted(tablet, marks)])
    for (const merged of [mergeBooks([older], [gone]), mergeBooks([gone], [older])])
      expect(merged).toEqual([gone]);
});
