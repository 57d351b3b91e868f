import { surfaceLight } from './surface-light.ts';

/**
 * Parameters of a hanging cloth's surface. Its cross-section is a meander of sine-generated curves:
 * the direction of the cloth is a sine of the arc length, the curve of least bending variance
 * (Langbein and Leopold, USGS Professional Paper 422-H, 1966, for rivers; from memory). Beyond a
 * right angle a fold doubles back and overlaps its neighbour.
 */
export interface SurfaceSection {
  /** Number of half folds; each runs from a hollow to a ridge or back. */
  readonly flanks: number;
  /** 1 if the first half fold comes forward, -1 if it goes back. */
  readonly first: 1 | -1;
  /** Length of cloth in half fold `flank`, in any one unit, at `v` (0…1) along the fold. */
  readonly cloth: (flank: number, v: number) => number;
  /** Steepest direction of half fold `flank`, radians; beyond π/2 it doubles back. */
  readonly swing: (flank: number, v: number) => number;
  /** Strength of the overall shading from left to right: the large form under the folds. */
  readonly turn?: number;
  /**
   * Position of a point, drawing units: x to the right, y down, z towards the viewer.
   *
   * @param across 0…1 from the first edge to the last, as seen
   * @param out depth towards the viewer, in the unit of `across`
   * @param v 0…1 along the fold
   * @param s 0…1 across the cloth, by arc length
   */
  readonly place: (across: number, out: number, v: number, s: number) => [number, number, number];
}

/** Samples in a half fold: the columns of the grid on which light is computed. */
const PER_FLANK = 9;

/** A lit surface on a grid, rows first: `columns` across the folds, `rows` along them. */
export interface ClothSurface {
  readonly section: SurfaceSection;
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Light towards the viewer at each point; about 0…1, without clamping. */
  readonly light: Float64Array;
}

/**
 * Computes the surface and its light.
 *
 * @param rows samples along the folds
 * @returns arrays of columns × rows values, owned by the caller
 */
export function clothSurface(section: SurfaceSection, rows: number): ClothSurface {
  const columns = section.flanks * PER_FLANK + 1;
  const size = columns * rows;
  const x = new Float64Array(size);
  const y = new Float64Array(size);
  const z = new Float64Array(size);
  const rise = new Float64Array(size);
  const p = new Float64Array(columns);
  const q = new Float64Array(columns);
  for (let j = 0; j < rows; j++) {
    const v = j / (rows - 1);
    let across = 0;
    let out = 0;
    let least = 0;
    let most = 0;
    let lowest = 0;
    let highest = 0;
    for (let flank = 0; flank < section.flanks; flank++) {
      const step = section.cloth(flank, v) / PER_FLANK;
      const swing = section.swing(flank, v) * (flank % 2 === 0 ? section.first : -section.first);
      for (let k = 1; k <= PER_FLANK; k++) {
        const angle = swing * Math.sin((Math.PI * (k - 0.5)) / PER_FLANK);
        across += step * Math.cos(angle);
        out += step * Math.sin(angle);
        const i = flank * PER_FLANK + k;
        p[i] = across;
        q[i] = out;
        least = Math.min(least, across);
        most = Math.max(most, across);
        lowest = Math.min(lowest, out);
        highest = Math.max(highest, out);
      }
    }
    const wide = most - least || 1;
    for (let i = 0; i < columns; i++) {
      const at = j * columns + i;
      // Scale the section to 0…1, with its middle depth at the wall.
      const depth = ((q[i] ?? 0) - (lowest + highest) / 2) / wide;
      const place = section.place(((p[i] ?? 0) - least) / wide, depth, v, i / (columns - 1));
      x[at] = place[0];
      y[at] = place[1];
      z[at] = place[2];
      rise[at] = ((q[i] ?? 0) - lowest) / (highest - lowest || 1);
    }
  }
  return {
    section,
    columns,
    rows,
    x,
    y,
    z,
    light: surfaceLight({ columns, rows, x, y, z, rise }, section.turn ?? 0),
  };
}

/** Bilinear interpolation of a field of the weave. @param s, v 0…1, clamped */
export function interpolate(
  { columns, rows }: ClothSurface,
  field: Float64Array,
  s: number,
  v: number,
): number {
  const fi = Math.min(columns - 1.000001, Math.max(0, s * (columns - 1)));
  const fj = Math.min(rows - 1.000001, Math.max(0, v * (rows - 1)));
  const i = Math.floor(fi);
  const j = Math.floor(fj);
  const a = fi - i;
  const b = fj - j;
  const at = j * columns + i;
  return (
    ((field[at] ?? 0) * (1 - a) + (field[at + 1] ?? 0) * a) * (1 - b) +
    ((field[at + columns] ?? 0) * (1 - a) + (field[at + columns + 1] ?? 0) * a) * b
  );
}
