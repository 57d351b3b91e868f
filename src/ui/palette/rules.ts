import { computed } from '@preact/signals';
import type { StudioRules } from '../../book/palette.ts';
import { STUDIO_PALETTE } from '../../book/palette.ts';
import { RULES, type Rules } from '../../palette/asked.ts';
import { sayPalette } from '../words/palette.ts';
import { studioPalette, today } from './days.ts';
import { inTurn, save } from './save.ts';

export const rules = computed((): Rules => {
  const own = studioPalette.value?.body;
  if (!own) return RULES;
  const { tooth, waste, heapCm3, ...settled } = own.rules ?? ruled(RULES);
  return {
    ...settled,
    seats: own.seats,
    shape: own.shape === 'oval' ? 'oval' : 'square',
    hand: own.hand,
    allowances: { tooth, waste, heapCm3 },
  };
});

const ruled = ({ allowances, edgeCm3, oil, pupils, people, acknowledged }: Rules): StudioRules => ({
  ...allowances,
  edgeCm3,
  oil,
  pupils,
  people,
  acknowledged,
});

/** Changes what the studio has settled. */
export const settle = (change: Partial<Rules>) =>
  inTurn(() => {
    const next = { ...rules.value, ...change };
    const over = studioPalette.value;
    return save(
      {
        kind: 'palette',
        id: STUDIO_PALETTE,
        ...(over ? { over } : {}),
        body: {
          name: sayPalette.studioPalette,
          note: over?.body.note ?? '',
          date: over?.body.date ?? today(),
          shape: next.shape === 'oval' ? 'oval' : 'square-cornered',
          hand: next.hand,
          seats: next.seats,
          passages: [],
          piles: [],
          rules: ruled(next),
        },
      },
      null,
    );
  });
