import { computed } from '@preact/signals';
import type { HarmonyBody } from '../../book/harmony.ts';
import type { Lab } from '../../colour/lab.ts';
import { WORKED } from '../../drapery/worked.ts';
import { moved } from '../harmony/drawn.ts';
import { name as harmonyName, kept, ladders, studied, targets } from '../harmony/state.ts';
import type { Offered } from './state.ts';

/** A list of colours to choose from. */
export interface Source {
  readonly name: string;
  /** The kept harmony that it is, where it is one. */
  readonly harmony: string | null;
  readonly colours: readonly Offered[];
}

/** The harmony that is open on the other bench, as it is to be mixed; null where none is. */
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

const ladderOf = (labs: readonly Lab[]) => (labs.length === 6 ? { ladder: labs } : {});

/** A kept harmony: every colour as it was to be mixed, with its ladder moved along. */
export const keptHarmony = (id: string, { name, colours }: HarmonyBody): Source => ({
  name,
  harmony: id,
  colours: colours.map(({ name, lab, share, accent, ladder, answer }) => {
    const target = answer?.target ?? lab;
    return {
      name,
      share,
      accent,
      lab: target,
      ...ladderOf(moved(ladder, lab, target).map((step) => step.lab)),
    };
  }),
});

/** The cloths that come with Kingcup. */
export const workedColours: readonly Offered[] = WORKED.map(({ wish }) => ({
  name: wish.name,
  lab: wish.lab,
  share: 1,
  accent: false,
}));
