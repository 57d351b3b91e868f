import { type NumberFormat, plainNumber } from '../src/number-format.ts';

/** Figures with a decimal comma. */
export const comma: NumberFormat = (...figure) => plainNumber(...figure).replace('.', ',');
