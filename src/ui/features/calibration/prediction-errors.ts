import { computed } from '@preact/signals';
import { deltaE00 } from '../../../colour/difference.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { fittedCurves } from './curve-fit.ts';
import { predictPile } from './pile-prediction.ts';

/**
 * CIEDE2000 between each swatch of the fit and the prediction of the current shelf; null where it
 * has no prediction.
 */
export const currentErrors = computed(() =>
  (fittedCurves.value?.swatches ?? []).map(({ painted: { parts, lab } }) => {
    const foreseen = predictPile(parts, ownStock.value);
    return foreseen && deltaE00(foreseen, lab);
  }),
);
