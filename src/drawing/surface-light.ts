/** Direction of the light, a unit vector but for rounding: upper left, in front of the cloth. */
const LIGHT = [-0.6, -0.42, 0.68] as const;
/** Direction of the weak reflected light from wall and floor: from the right and below. */
const REFLECTED_LIGHT = [0.8, 0.35, 0.25] as const;

/** Smoothstep from `low` to `high`, 0…1. */
const smoothstep = (low: number, high: number, value: number) => {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
};

/**
 * A surface on a grid, row by row: x right, y down, z towards the viewer, `rise` 0 in hollows to 1
 * on ridges.
 */
interface HeightGrid {
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly rise: Float64Array;
}

/**
 * Light at each point: direct light, minus the shadow that a ridge casts to its right, plus
 * reflected light.
 *
 * @param turn strength of a linear shading from left to right
 * @returns columns × rows values, about 0…1 without clamping, owned by the caller
 */
export function surfaceLight(
  { columns, rows, x, y, z, rise }: HeightGrid,
  turn: number,
): Float64Array {
  const light = new Float64Array(columns * rows);
  const slope = LIGHT[2] / -LIGHT[0];
  for (let j = 0; j < rows; j++) {
    const up = Math.max(0, j - 1) * columns;
    const down = Math.min(rows - 1, j + 1) * columns;
    let horizon = Number.NEGATIVE_INFINITY;
    let reach = 0;
    for (let i = 0; i < columns; i++) {
      reach = Math.max(reach, Math.abs(z[j * columns + i] ?? 0));
    }
    for (let i = 0; i < columns; i++) {
      const at = j * columns + i;
      const left = j * columns + Math.max(0, i - 1);
      const right = j * columns + Math.min(columns - 1, i + 1);
      const ax = (x[right] ?? 0) - (x[left] ?? 0);
      const ay = (y[right] ?? 0) - (y[left] ?? 0);
      const az = (z[right] ?? 0) - (z[left] ?? 0);
      const bx = (x[down + i] ?? 0) - (x[up + i] ?? 0);
      const by = (y[down + i] ?? 0) - (y[up + i] ?? 0);
      const bz = (z[down + i] ?? 0) - (z[up + i] ?? 0);
      let nx = ay * bz - az * by;
      let ny = az * bx - ax * bz;
      let nz = ax * by - ay * bx;
      const length = Math.hypot(nx, ny, nz) || 1;
      const side = nz < 0 ? -1 : 1;
      nx *= side / length;
      ny *= side / length;
      nz *= side / length;
      const direct = Math.max(0, nx * LIGHT[0] + ny * LIGHT[1] + nz * LIGHT[2]);
      const back = Math.max(
        0,
        nx * REFLECTED_LIGHT[0] + ny * REFLECTED_LIGHT[1] + nz * REFLECTED_LIGHT[2],
      );
      const height = (z[at] ?? 0) + (x[at] ?? 0) * slope;
      const cast = smoothstep(0, 0.5 * reach + 0.01, horizon - height);
      horizon = Math.max(horizon, height);
      const hollow = (1 - (rise[at] ?? 0)) ** 1.5;
      const floor = smoothstep(0.86, 1, j / (rows - 1));
      light[at] =
        0.86 * direct * (1 - 0.55 * cast) * (1 - 0.3 * hollow) +
        0.12 * (1 - hollow) +
        0.13 * back * (1 - 0.5 * hollow) +
        0.05 * floor * (1 - direct) +
        turn * (0.45 - i / (columns - 1));
    }
  }
  return light;
}
