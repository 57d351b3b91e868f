import { computed } from '@preact/signals';
import { deltaE00 } from '../../colour/difference.ts';
import { ownStock } from '../shelf/state.ts';
import { found } from './fitting.ts';
import { foreseenOf } from './pile.ts';

/** How far each swatch of the fit came out from what the shelf as it is foresees; null where it cannot say. */
export const before = computed(() =>
  (found.value?.swatches ?? []).map(({ painted: { parts, lab } }) => {
    const foreseen = foreseenOf(parts, ownStock.value);
    return foreseen && deltaE00(foreseen, lab);
  }),
);
