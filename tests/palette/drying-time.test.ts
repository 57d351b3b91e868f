import { expect, test } from 'vitest';
import { drynessOf, filmDays, isDry } from '../../src/palette/drying-time.ts';
import { daysBetween, fullDay, isDay } from '../../src/palette/iso-date.ts';
import type { Layer } from '../../src/palette/passage.ts';
import { partsOf } from './made.ts';

const coat = (parts: Record<string, number>, more: Partial<Layer> = {}): Layer => ({
  date: '2026-05-01',
  film: 'body colour',
  parts: partsOf(parts),
  ...more,
});

// Handbook sheet, section 1.3: drying words, for pure paint in linseed oil.
test('the words keep their order: umber, ochre, bone black, Cassel earth', () => {
  const most = ['raw_umber', 'yellow_ochre', 'bone_black', 'cassel_earth'].map(
    (id) => filmDays(coat({ [id]: 1 })).most,
  );
  expect(most).toEqual(most.toSorted((a, b) => a - b));
  expect(new Set(most).size).toBe(4);
});

test('thicker dries later, a glaze sooner, spare oil later', () => {
  const days = (more: Partial<Layer>) => filmDays(coat({ yellow_ochre: 1 }, more)).most;
  expect(days({ film: 'impasto' })).toBeGreaterThan(days({}));
  expect(days({ filmUm: 10 })).toBeLessThan(days({}));
  expect(days({ spareOil: 0.3 })).toBeGreaterThan(days({}));
});

test('umber hastens a black, and a mixture lies between its pigments', () => {
  const [umber, both, black] = [
    { raw_umber: 1 },
    { raw_umber: 1, bone_black: 1 },
    { bone_black: 1 },
  ].map((parts) => filmDays(coat(parts)).most);
  expect(both).toBeGreaterThan(umber!);
  expect(both).toBeLessThan(black!);
});

test('wet, tacky, touch-dry: a range that only moves forward', () => {
  const order = ['wet', 'tacky', 'touch-dry'];
  const freshly = drynessOf(coat({ bone_black: 1 }), '2026-05-01');
  expect(freshly).toMatchObject({ least: 'wet', most: 'wet' });
  let last = [0, 0];
  for (let day = 1; day <= 28; day++) {
    const { least, most } = drynessOf(
      coat({ bone_black: 1 }),
      `2026-05-${String(day).padStart(2, '0')}`,
    );
    const now = [order.indexOf(least), order.indexOf(most)];
    expect(now[0]).toBeLessThanOrEqual(now[1]!);
    expect(now[0]).toBeGreaterThanOrEqual(last[0]!);
    expect(now[1]).toBeGreaterThanOrEqual(last[1]!);
    last = now;
  }
  expect(last).toEqual([2, 2]);
});

// Handbook sheet: a glaze over a coat that is still tacky tears it up.
test('tacky is not dry enough for a glaze, touch-dry is', () => {
  const felt = (state: 'wet' | 'tacky' | 'touch-dry') =>
    drynessOf(coat({ raw_umber: 1 }, { felt: { date: '2026-05-03', state } }), '2026-05-03');
  expect(isDry(felt('wet'))).toBe(false);
  expect(isDry(felt('tacky'))).toBe(false);
  expect(isDry(felt('touch-dry'))).toBe(true);
  expect(isDry({ ...felt('tacky'), most: 'touch-dry' })).toBe(false);
});

test('what the finger found outranks the estimate', () => {
  const felt = (state: 'tacky' | 'touch-dry', date: string) =>
    coat({ yellow_ochre: 1 }, { felt: { state, date } });
  expect(isDry(drynessOf(felt('touch-dry', '2026-05-02'), '2026-05-03'))).toBe(true);
  expect(isDry(drynessOf(felt('tacky', '2026-05-20'), '2026-05-20'))).toBe(false);
  // Tacky on the 2nd says nothing of the 20th.
  expect(isDry(drynessOf(felt('tacky', '2026-05-02'), '2026-05-20'))).toBe(true);
});

test('days of the calendar', () => {
  expect(['2026-05-14', '2024-02-29'].every(isDay)).toBe(true);
  expect(['2026-02-29', '2026-5-4', '14 May', '2026-13-01', ''].some(isDay)).toBe(false);
  expect(daysBetween('2026-02-27', '2026-03-02')).toBe(3);
  expect(fullDay('2026-05-14')).toBe('Thursday 14 May 2026');
});
