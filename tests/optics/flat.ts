import { BANDS, type Reflectance, spectrum } from '../../src/colour/grid.ts';
import type { Paint } from '../../src/optics/opaque.ts';

/** The same reflectance in every band. */
export const flat = (R: number): Reflectance => spectrum<'R'>(new Float64Array(BANDS).fill(R));

/** A grey: the same K and S in every band. */
export const flatPaint = (K: number, S: number): Paint => ({
  K: spectrum<'K'>(new Float64Array(BANDS).fill(K)),
  S: spectrum<'S'>(new Float64Array(BANDS).fill(S)),
});
