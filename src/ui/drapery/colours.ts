import { computed } from '@preact/signals';
import { WORKED } from '../../drapery/worked.ts';
import { name as harmonyName, kept, ladders, studied, targets } from '../harmony/state.ts';
import { ladderOf, type Source } from './kept.ts';
import type { Offered } from './state.ts';

/** The harmony that is open in the Harmony place, with its target colours; null if none is open. */
export const openHarmony = computed<Source | null>(() => {
  if (studied.value.length === 0) return null;
  return {
    name: harmonyName.value || studied.value.map(({ gathered }) => gathered.name).join(', '),
    harmony: kept.value?.id ?? null,
    colours: studied.value.map(({ gathered: { name, share, accent } }, i) => ({
      name,
      share,
      accent,
      lab: targets.value[i]!,
      ...ladderOf(ladders.value[i]!.map(({ lab }) => lab)),
    })),
  };
});

/** The example cloths that come with Kingcup. */
export const workedColours: readonly Offered[] = WORKED.map(({ wish }) => ({
  name: wish.name,
  lab: wish.lab,
  share: 1,
  accent: false,
}));
