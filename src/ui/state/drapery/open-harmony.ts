import { computed } from '@preact/signals';
import { SHIPPED_FORMULAS } from '../../../drapery/shipped-formulas.ts';
import {
  harmonyColours,
  name as harmonyName,
  ladders,
  savedHarmony,
  targets,
} from '../harmony/current-harmony.ts';
import { type ColourSource, sixStepLadder } from './colour-sources.ts';
import type { ColourOption } from './drapery-scheme.ts';

/** The harmony that is open in the Harmony place, with its target colours; null if none is open. */
export const openHarmony = computed<ColourSource | null>(() => {
  if (harmonyColours.value.length === 0) return null;
  return {
    name: harmonyName.value || harmonyColours.value.map(({ gathered }) => gathered.name).join(', '),
    harmony: savedHarmony.value?.id ?? null,
    colours: harmonyColours.value.map(({ gathered: { name, share, accent } }, i) => ({
      name,
      share,
      accent,
      lab: targets.value[i]!,
      ...sixStepLadder(ladders.value[i]!.map(({ lab }) => lab)),
    })),
  };
});

/** The example cloths that come with Kingcup. */
export const exampleColours: readonly ColourOption[] = SHIPPED_FORMULAS.map(({ wish }) => ({
  name: wish.name,
  lab: wish.lab,
  share: 1,
  accent: false,
}));
