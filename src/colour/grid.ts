/** Band centres 380, 390 … 730 nm: every spectrum in the core has one value per band. */
export const BANDS = 36;
export const FIRST_NM = 380;
export const STEP_NM = 10;
export const LAST_NM = FIRST_NM + (BANDS - 1) * STEP_NM;

declare const kind: unique symbol;
/**
 * BANDS values on the grid. Kinds are distinct types: absorption cannot be passed for reflectance.
 */
export type Spectrum<Kind extends string> = Float64Array & { readonly [kind]: Kind };
/** Reflectance factor 0…1. */
export type Reflectance = Spectrum<'R'>;

/** Centre of a band in nanometres. */
export const bandNm = (band: number): number => FIRST_NM + band * STEP_NM;

/**
 * Allocates a spectrum of the kind `Kind`.
 * @param values BANDS numbers, copied; zeros if left out
 * @throws RangeError when there are not BANDS values or one is not finite
 */
export function spectrum<Kind extends string>(values?: ArrayLike<number>): Spectrum<Kind> {
  if (values === undefined) return new Float64Array(BANDS) as Spectrum<Kind>;
  if (values.length !== BANDS)
    throw new RangeError(`a spectrum has ${BANDS} values, not ${values.length}`);
  const copy = Float64Array.from(values);
  if (!copy.every(Number.isFinite)) throw new RangeError('a spectrum holds finite numbers only');
  return copy as Spectrum<Kind>;
}
