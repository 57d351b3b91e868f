import { computed, signal } from '@preact/signals';
import type { StudioRules } from '../../book/palette.ts';
import { STUDIO_PALETTE } from '../../book/palette.ts';
import { RULES, type Rules } from '../../palette/asked.ts';
import { today } from '../locale.ts';
import { sayPalette } from '../words/palette.ts';
import { studioPalette } from './days.ts';
import { inTurn, save } from './save.ts';

/** The studio's rules as saved in the book; defaults for missing ones. */
const settled = computed((): Rules => {
  const own = studioPalette.value?.body;
  if (!own) return RULES;
  const { tooth, waste, heapCm3, ...others } = own.rules ?? ruled(RULES);
  return {
    ...others,
    seats: own.seats,
    shape: own.shape === 'oval' ? 'oval' : 'square',
    hand: own.hand,
    allowances: { tooth, waste, heapCm3 },
  };
});

/** Changes that are not saved yet, oldest first. */
const underway = signal<readonly Partial<Rules>[]>([]);
/** The rules with unsaved changes applied: the interface shows an edit at once. */
export const rules = computed((): Rules => Object.assign({}, settled.value, ...underway.value));

const ruled = ({ allowances, edgeCm3, oil, pupils, people, acknowledged }: Rules): StudioRules => ({
  ...allowances,
  edgeCm3,
  oil,
  pupils,
  people,
  acknowledged,
});

/** Changes the studio's rules and saves them; null after a fault. */
export const settle = async (change: Partial<Rules>): ReturnType<typeof keep> => {
  underway.value = [...underway.value, change];
  try {
    return await keep(change);
  } finally {
    underway.value = underway.value.filter((one) => one !== change);
  }
};

const keep = (change: Partial<Rules>) =>
  inTurn(() => {
    const next = { ...settled.value, ...change };
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
