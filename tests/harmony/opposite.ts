import type { VariantWay } from '../../src/harmony/variant-target.ts';
/** The opposite direction. */
export const OPPOSITE: Record<VariantWay, VariantWay> = {
  warmer: 'cooler',
  cooler: 'warmer',
  lighter: 'deeper',
  deeper: 'lighter',
  brighter: 'duller',
  duller: 'brighter',
};
