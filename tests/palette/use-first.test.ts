import { expect, test } from 'vitest';
import { type Leftover, offersOf } from '../../src/palette/leftovers.ts';
import { partsOf } from './made.ts';

const TODAY = '2026-05-14';
const parts = partsOf({ yellow_ochre: 3, raw_umber: 1 });
const pile = { name: 'bank', parts, lab: [45, 8, 30] as const };
const left = (date: string, more: Partial<Leftover> = {}): Leftover => ({
  id: date,
  name: 'bank',
  parts,
  cm3: 2,
  kept: 'under film',
  date,
  ...more,
});

// Common practice: what is left is used first, the oldest before the rest; what has a skin never is.
test('a heap is offered to its pile while it is good, and not once it is too old or has a skin', () => {
  const heaps = [
    left('2026-05-13'),
    left('2026-05-12'),
    left('2026-03-01'),
    left('2026-05-11', { skinned: true }),
  ];
  const offers = offersOf(heaps, [pile], TODAY);
  expect(offers.map(({ leftover, state, piles }) => [leftover.date, state, piles])).toEqual([
    ['2026-03-01', 'past', []],
    ['2026-05-11', 'skinned', []],
    ['2026-05-12', expect.stringMatching(/^(fresh|ageing)$/), ['bank']],
    ['2026-05-13', 'fresh', ['bank']],
  ]);
});
