import { computed } from '@preact/signals';
import { deltaE00 } from '../../colour/difference.ts';
import { ownStock } from '../shelf/state.ts';
import { found } from './fitting.ts';
import { foreseenOf } from './pile.ts';

/**
 * CIEDE2000 between each swatch of the fit and the prediction of the current shelf; null where it
 * has no prediction.
 */
export const before = computed(() =>
  (found.value?.swatches ?? []).map(({ painted: { parts, lab } }) => {
    const foreseen = foreseenOf(parts, ownStock.value);
    return foreseen && deltaE00(foreseen, lab);
  }),
);
