/** Squared difference ΔE² ≈ dᵀ M d, with M from {@link deltaE00QuadraticForm}. */
export function squaredByQuadraticForm(
  form: Float64Array,
  dL: number,
  da: number,
  db: number,
): number {
  return form[0]! * dL * dL + form[4]! * da * da + 2 * form[5]! * da * db + form[8]! * db * db;
}
