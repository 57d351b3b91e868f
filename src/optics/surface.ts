import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';

/**
 * Saunderson constants of the boundary between paint and air. They belong to a shelf (its data
 * set), never to the program. `specular: 'excluded'` is varnished paint seen without glare: the
 * leading k1 is dropped.
 */
export interface Surface {
  /** Share of the incident light reflected at the surface, 0 ≤ k1 < 1. */
  readonly k1: number;
  /** Share of the diffuse light reflected back into the paint on its way out, 0 ≤ k2 < 1. */
  readonly k2: number;
  readonly specular: 'included' | 'excluded';
}

/** A boundary without reflection: measured and internal reflectance are equal. */
export const NO_SURFACE: Surface = { k1: 0, k2: 0, specular: 'included' };

/** @throws RangeError when k1 or k2 is not in 0 ≤ k < 1: a surface with 1 transmits no light */
export function checkSurface({ k1, k2 }: Surface): void {
  if (!(k1 >= 0 && k1 < 1 && k2 >= 0 && k2 < 1))
    throw new RangeError(`a surface has 0 ≤ k1 < 1 and 0 ≤ k2 < 1, not ${k1} and ${k2}`);
}

/**
 * Measured reflectance from internal reflectance: Rm = k1 + (1 − k1)(1 − k2)R ÷ (1 − k2R).
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

/**
 * Internal from measured reflectance, the inverse of {@link throughSurface}; below 0 for a value
 * that no paint under this surface can have.
 */
export function underSurface(measured: number, { k1, k2, specular }: Surface): number {
  const m = specular === 'included' ? measured - k1 : measured;
  return m / ((1 - k1) * (1 - k2) + k2 * m);
}

/**
 * {@link throughSurface} for every band, in place: `R` is overwritten and returned.
 * @throws RangeError for an invalid surface or a reflectance that is NaN
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

/** Internal reflectance assigned to a band that was measured darker than its surface alone. */
export const DARKEST = 1e-4;

/**
 * Internal reflectance of a measured spectrum. A band measured darker than the surface alone (or
 * brighter than a perfect diffuser) has no internal value: it is clamped to {@link DARKEST} (or 1)
 * and counted, so that the caller can report it.
 *
 * @param measured BANDS values, finite; not changed
 * @returns a new spectrum, DARKEST…1, and the number of clamped bands
 * @throws RangeError for an invalid surface or a reflectance that is NaN
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
