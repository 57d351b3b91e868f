/** A 3 × 3 matrix as three rows. */
export type Matrix = readonly [Row, Row, Row];
type Row = readonly [number, number, number];

/** Dot product of a row and the column (x, y, z). */
export const dot = (row: Row, x: number, y: number, z: number): number =>
  row[0] * x + row[1] * y + row[2] * z;

/** Matrix times the column (x, y, z). */
export const multiplyColumn = (m: Matrix, x: number, y: number, z: number): Row => [
  dot(m[0], x, y, z),
  dot(m[1], x, y, z),
  dot(m[2], x, y, z),
];

/**
 * {@link multiplyColumn} for loops that must not allocate.
 * @param out 3 values, overwritten and returned
 */
export function multiplyColumnInto(
  m: Matrix,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
): Float64Array {
  out[0] = dot(m[0], x, y, z);
  out[1] = dot(m[1], x, y, z);
  out[2] = dot(m[2], x, y, z);
  return out;
}

/** The matrix product a·b: b is applied first. */
export function product(a: Matrix, b: Matrix): Matrix {
  const row = (r: Row): Row => [
    dot(r, b[0][0], b[1][0], b[2][0]),
    dot(r, b[0][1], b[1][1], b[2][1]),
    dot(r, b[0][2], b[1][2], b[2][2]),
  ];
  return [row(a[0]), row(a[1]), row(a[2])];
}

export const diagonal = (x: number, y: number, z: number): Matrix => [
  [x, 0, 0],
  [0, y, 0],
  [0, 0, z],
];

/** Inverse by cofactors. @throws RangeError when the matrix is singular */
export function inverse([[a, b, c], [d, e, f], [g, h, i]]: Matrix): Matrix {
  const A = e * i - f * h;
  const B = f * g - d * i;
  const C = d * h - e * g;
  const determinant = a * A + b * B + c * C;
  if (!(Math.abs(determinant) > 0)) throw new RangeError('this matrix has no inverse');
  const s = 1 / determinant;
  return [
    [A * s, (c * h - b * i) * s, (b * f - c * e) * s],
    [B * s, (a * i - c * g) * s, (c * d - a * f) * s],
    [C * s, (b * g - a * h) * s, (a * e - b * d) * s],
  ];
}
