import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';

/**
 * What happens at the boundary of paint and air. A property of a shelf (of its data set), never of
 * the program. `specular: 'excluded'` is varnished paint seen without glare: the leading k1 is dropped.
 */
export interface Surface {
  /** Share of the light reflected on the way in, 0 ≤ k1 < 1. */
  readonly k1: number;
  /** Share of the diffuse light reflected back on the way out, 0 ≤ k2 < 1. */
  readonly k2: number;
  readonly specular: 'included' | 'excluded';
}

export const NO_SURFACE: Surface = { k1: 0, k2: 0, specular: 'included' };

/** @throws RangeError when k1 or k2 is not in 0 ≤ k < 1: a surface of 1 lets no light through */
export function checkSurface({ k1, k2 }: Surface): void {
  if (!(k1 >= 0 && k1 < 1 && k2 >= 0 && k2 < 1))
    throw new RangeError(`a surface has 0 ≤ k1 < 1 and 0 ≤ k2 < 1, not ${k1} and ${k2}`);
}

/**
 * Measured reflectance of an internal one: Rm = k1 + (1 − k1)(1 − k2)R ÷ (1 − k2R).
 * @see J. L. Saunderson, J. Opt. Soc. Am. 32 (1942) 727
 */
export function throughSurface(R: number, { k1, k2, specular }: Surface): number {
  return (specular === 'included' ? k1 : 0) + ((1 - k1) * (1 - k2) * R) / (1 - k2 * R);
}

/** dRm ÷ dR of {@link throughSurface}. */
export function surfaceSlope(R: number, { k1, k2 }: Surface): number {
  const through = 1 - k2 * R;
  return ((1 - k1) * (1 - k2)) / (through * through);
}

/** Internal reflectance of a measured one: the inverse of {@link throughSurface}; below 0 where no paint could measure so. */
export function underSurface(measured: number, { k1, k2, specular }: Surface): number {
  const m = specular === 'included' ? measured - k1 : measured;
  return m / ((1 - k1) * (1 - k2) + k2 * m);
}

/**
 * {@link throughSurface} for every band, in place.
 * @throws RangeError for constants that are no surface, or a reflectance that is not a number
 */
export function addSurface(R: Reflectance, surface: Surface): Reflectance {
  checkSurface(surface);
  for (let band = 0; band < BANDS; band++) {
    const measured = throughSurface(R[band]!, surface);
    if (Number.isNaN(measured)) throw new RangeError(`band ${band} has no reflectance`);
    R[band] = measured;
  }
  return R;
}

/** The least internal reflectance that is given for a band measured darker than its own surface. */
export const DARKEST = 1e-4;

/**
 * Internal reflectance of a measured spectrum. A band that measures darker than the surface alone
 * (or brighter than a perfect diffuser) has no internal value: it is set to {@link DARKEST} (or 1)
 * and counted, so that the caller can say so.
 *
 * @param measured BANDS values, finite
 * @returns a new spectrum, DARKEST…1, and how many bands were set
 * @throws RangeError for constants that are no surface, or a reflectance that is not a number
 */
export function removeSurface(
  measured: Reflectance,
  surface: Surface,
): { R: Reflectance; clamped: number } {
  checkSurface(surface);
  const R = spectrum<'R'>();
  let clamped = 0;
  for (let band = 0; band < BANDS; band++) {
    const internal = underSurface(measured[band]!, surface);
    if (Number.isNaN(internal)) throw new RangeError(`band ${band} has no reflectance`);
    R[band] = Math.min(Math.max(internal, DARKEST), 1);
    if (R[band] !== internal) clamped++;
  }
  return { R, clamped };
}
