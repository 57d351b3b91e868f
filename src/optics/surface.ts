import { BANDS, type Reflectance } from '../colour/grid.ts';

/**
 * What happens at the boundary of paint and air. A property of a shelf (of its data set), never of
 * the program. `specular: 'excluded'` is varnished paint seen without glare: the leading k1 is dropped.
 */
export interface Surface {
  /** Share of the light reflected on the way in, 0…1. */
  readonly k1: number;
  /** Share of the diffuse light reflected back on the way out, 0…1. */
  readonly k2: number;
  readonly specular: 'included' | 'excluded';
}

export const NO_SURFACE: Surface = { k1: 0, k2: 0, specular: 'included' };

/**
 * Measured reflectance of an internal one: Rm = k1 + (1 − k1)(1 − k2)R ÷ (1 − k2R).
 * @see J. L. Saunderson, J. Opt. Soc. Am. 32 (1942) 727
 */
export function throughSurface(R: number, { k1, k2, specular }: Surface): number {
  return (specular === 'included' ? k1 : 0) + ((1 - k1) * (1 - k2) * R) / (1 - k2 * R);
}

/** Internal reflectance of a measured one: the inverse of {@link throughSurface}; below 0 where no paint could measure so. */
export function underSurface(measured: number, { k1, k2, specular }: Surface): number {
  const m = specular === 'included' ? measured - k1 : measured;
  return m / ((1 - k1) * (1 - k2) + k2 * m);
}

/** {@link throughSurface} for every band, in place. */
export function addSurface(R: Reflectance, surface: Surface): Reflectance {
  for (let band = 0; band < BANDS; band++) R[band] = throughSurface(R[band]!, surface);
  return R;
}
