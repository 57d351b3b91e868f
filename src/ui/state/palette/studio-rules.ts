import { computed, signal } from '@preact/signals';
import type { StudioRules } from '../../../book/schema/palette.ts';
import { STUDIO_PALETTE } from '../../../book/schema/palette.ts';
import { DEFAULT_RULES, type Rules } from '../../../palette/day-request.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { today } from '../locale-format.ts';
import { studioPalette } from './day-entries.ts';
import { runInSequence, saveDayEntry } from './save-entry.ts';

/** The studio's rules as saved in the book; defaults for missing ones. */
const savedRules = computed((): Rules => {
  const own = studioPalette.value?.body;
  if (!own) return DEFAULT_RULES;
  const { tooth, waste, heapCm3, ...others } = own.rules ?? storedRulesOf(DEFAULT_RULES);
  return {
    ...others,
    seats: own.seats,
    shape: own.shape === 'oval' ? 'oval' : 'square',
    hand: own.hand,
    allowances: { tooth, waste, heapCm3 },
  };
});

/** Changes that are not saved yet, oldest first. */
const pendingRuleChanges = signal<readonly Partial<Rules>[]>([]);
/** The rules with unsaved changes applied: the interface shows an edit at once. */
export const studioRules = computed(
  (): Rules => Object.assign({}, savedRules.value, ...pendingRuleChanges.value),
);

const storedRulesOf = ({
  allowances,
  edgeCm3,
  oil,
  pupils,
  people,
  acknowledged,
}: Rules): StudioRules => ({
  ...allowances,
  edgeCm3,
  oil,
  pupils,
  people,
  acknowledged,
});

/** Changes the studio's rules and saves them; null after a fault. */
export const updateStudioRules = async (change: Partial<Rules>): ReturnType<typeof saveRules> => {
  pendingRuleChanges.value = [...pendingRuleChanges.value, change];
  try {
    return await saveRules(change);
  } finally {
    pendingRuleChanges.value = pendingRuleChanges.value.filter((one) => one !== change);
  }
};

const saveRules = (change: Partial<Rules>) =>
  runInSequence(() => {
    const next = { ...savedRules.value, ...change };
    const over = studioPalette.value;
    return saveDayEntry(
      {
        kind: 'palette',
        id: STUDIO_PALETTE,
        ...(over ? { over } : {}),
        body: {
          name: paletteTexts.studioPalette,
          note: over?.body.note ?? '',
          date: over?.body.date ?? today(),
          shape: next.shape === 'oval' ? 'oval' : 'square-cornered',
          hand: next.hand,
          seats: next.seats,
          passages: [],
          piles: [],
          rules: storedRulesOf(next),
        },
      },
      null,
    );
  });
