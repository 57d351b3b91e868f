import { lit } from './light.ts';

/**
 * Hanging cloth as a surface. Across the folds its section is a meander of sine-generated curves:
 * the direction of the cloth swings as a sine of the way along it, which is the gentlest bend that
 * a length of cloth can take (Langbein and Leopold, USGS Professional Paper 422-H, 1966, for
 * rivers; from memory). Past a right angle a fold doubles back and overlaps its neighbour.
 */
export interface Section {
  /** Half folds: each runs from a hollow to a ridge or back. */
  readonly flanks: number;
  /** 1 when the first half fold comes forward, -1 when it goes back. */
  readonly first: 1 | -1;
  /** Cloth in half fold `flank`, in any unit, at the way `v` (0…1) along the fold. */
  readonly cloth: (flank: number, v: number) => number;
  /** Steepest direction of half fold `flank`, radians; over π/2 doubles back. */
  readonly swing: (flank: number, v: number) => number;
  /** How much the whole turns from the light, left to right: the big form over its folds. */
  readonly turn?: number;
  /**
   * Where a point lies, x to the right, y down, z towards us.
   * @param across 0…1 from the first edge to the last as seen
   * @param out depth towards us, in the unit of `across`
   * @param s 0…1 along the cloth itself
   */
  readonly place: (across: number, out: number, v: number, s: number) => [number, number, number];
}

/** Samples in a half fold, and ways along it: the grid on which light is worked out. */
const PER_FLANK = 9;

export interface Weave {
  readonly section: Section;
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Light that a point sends us, 0…1. */
  readonly light: Float64Array;
}

/** Works out the surface and its light on `rows` ways along the folds. */
export function weave(section: Section, rows: number): Weave {
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
      // The whole section is kept between 0 and 1, its middle depth at the wall's own.
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
    light: lit({ columns, rows, x, y, z, rise }, section.turn ?? 0),
  };
}

/** The value of a field of the weave between its samples. */
export function look({ columns, rows }: Weave, field: Float64Array, s: number, v: number): number {
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
