import type { Sheet } from './contour.ts';

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

/** Where the light comes from: upper left, before the cloth. The drapery study's window. */
const LIGHT = [-0.6, -0.42, 0.68] as const;
/** Light thrown back by the wall and floor: weak, from the right and below. */
const BACK = [0.8, 0.35, 0.25] as const;

const smooth = (low: number, high: number, value: number) => {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
};

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

interface Lay {
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly rise: Float64Array;
}

/** Direct light, the shadow that a ridge casts on what lies right of it, and light thrown back. */
function lit({ columns, rows, x, y, z, rise }: Lay, turn: number): Float64Array {
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
      const back = Math.max(0, nx * BACK[0] + ny * BACK[1] + nz * BACK[2]);
      const height = (z[at] ?? 0) + (x[at] ?? 0) * slope;
      const cast = smooth(0, 0.5 * reach + 0.01, horizon - height);
      horizon = Math.max(horizon, height);
      const hollow = (1 - (rise[at] ?? 0)) ** 1.5;
      const floor = smooth(0.86, 1, j / (rows - 1));
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

/** One visible piece of a weave: a ridge, a hollow, or the wrong side where a fold doubles back. */
export interface Piece extends Sheet {
  readonly side: 'ridge' | 'hollow' | 'wrong';
  /** Which ridge, hollow or half fold: the same piece of another cut of this weave has the same. */
  readonly which: number;
  /** Towards us; pieces are painted from the least to the greatest. */
  readonly depth: number;
  readonly light: Float64Array;
}

export interface Cut {
  /** The v at which the cloth begins and ends, for the way s (0…1) across it. */
  readonly from?: (s: number) => number;
  readonly to: (s: number) => number;
  readonly columns: number;
  readonly rows: number;
  /** True where the wrong side never comes to light, as in a swag. */
  readonly oneSided?: boolean;
}

/** The strip along the last edge of a weave, `part` of its last half fold wide. */
export function edgeOf(woven: Weave, part: number, rows: number): Piece {
  const { columns, section } = woven;
  const size = 4 * rows;
  const strip = {
    x: new Float64Array(size),
    y: new Float64Array(size),
    light: new Float64Array(size),
  };
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < 4; i++) {
      const s = 1 - ((1 - i / 3) * part) / section.flanks;
      const at = j * 4 + i;
      const v = j / (rows - 1);
      strip.x[at] = look(woven, woven.x, s, v);
      strip.y[at] = look(woven, woven.y, s, v);
      strip.light[at] = look(woven, woven.light, s, v);
    }
  }
  return { columns: 4, rows, ...strip, side: 'ridge', which: section.flanks, depth: columns };
}

/** The value of a field of the weave between its samples. */
function look({ columns, rows }: Weave, field: Float64Array, s: number, v: number): number {
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

/** The stretches of 0…1 where something holds. */
function runsOf(holds: (v: number) => boolean): [number, number][] {
  const runs: [number, number][] = [];
  const steps = 40;
  let since = -1;
  for (let k = 0; k <= steps + 1; k++) {
    const on = k <= steps && holds(k / steps);
    if (on && since < 0) since = k;
    if (on || since < 0) continue;
    runs.push([Math.max(0, since - 1) / steps, Math.min(steps, k) / steps]);
    since = -1;
  }
  return runs;
}

/** Cuts a weave at the lines where folds turn away from us, so that no piece covers itself. */
export function piecesOf(woven: Weave, cut: Cut): Piece[] {
  const { section } = woven;
  /** How far from the middle of a half fold, 0…0.5 of it, the cloth turns away from us. */
  const turn = (flank: number, v: number) => {
    const swing = section.swing(flank, v);
    return swing <= Math.PI / 2 ? 0 : Math.acos(Math.PI / 2 / swing) / Math.PI;
  };
  const flanks = section.flanks;
  const piece = (
    side: Piece['side'],
    which: number,
    from: (v: number) => number,
    to: (v: number) => number,
    least = 0,
    most = 1,
  ): Piece => {
    const size = cut.columns * cut.rows;
    const px = new Float64Array(size);
    const py = new Float64Array(size);
    const light = new Float64Array(size);
    let depth = 0;
    for (let i = 0; i < cut.columns; i++) {
      const t = i / (cut.columns - 1);
      for (let j = 0; j < cut.rows; j++) {
        let v = j / (cut.rows - 1);
        let s = 0;
        // Where the hem ends depends on where across the cloth we are, and that upon the row.
        for (let round = 0; round < 3; round++) {
          s = (from(v) * (1 - t) + to(v) * t) / flanks;
          const begin = Math.min(most, cut.to(s), Math.max(least, cut.from?.(s) ?? 0));
          const end = Math.max(begin, Math.min(most, cut.to(s)));
          v = begin + ((end - begin) * j) / (cut.rows - 1);
        }
        const at = j * cut.columns + i;
        px[at] = look(woven, woven.x, s, v);
        py[at] = look(woven, woven.y, s, v);
        light[at] = look(woven, woven.light, s, v);
        depth += look(woven, woven.z, s, v) / size;
      }
    }
    return { columns: cut.columns, rows: cut.rows, x: px, y: py, light, side, which, depth };
  };
  const pieces: Piece[] = [];
  for (let flank = 0; flank < flanks; flank++) {
    // Only near the hem can the wrong side be seen; higher up it stays well under its ridge.
    const low = cut.to((flank + 0.5) / flanks);
    const wide = (v: number) =>
      turn(flank, v) * (1 - 0.35 * Math.min(1, Math.max(0, (low - v) / 0.2)));
    for (const [begin, end] of runsOf((v) => turn(flank, v) > 0)) {
      if (cut.oneSided || end < low - 0.15) continue;
      pieces.push(
        piece(
          'wrong',
          flank,
          (v) => flank + 0.5 - wide(v),
          (v) => flank + 0.5 + wide(v),
          begin,
          end,
        ),
      );
    }
  }
  for (let node = 0; node <= flanks; node++) {
    const before = node - 1;
    const rising = node % 2 === 0 ? -section.first : section.first;
    // Hollows run on under their ridges where the cloth does not double back, or the wall would
    // show through the seam.
    const under = rising > 0 ? 0.02 : 0.14;
    const past = (bend: number) => Math.max(0.02, under - 3 * bend);
    const from = (v: number) => {
      if (before < 0) return 0;
      const bend = turn(before, v);
      return before + 0.5 + bend - past(bend);
    };
    const to = (v: number) => {
      if (node >= flanks) return flanks;
      const bend = turn(node, v);
      return node + 0.5 - bend + past(bend);
    };
    pieces.push(piece(rising > 0 ? 'ridge' : 'hollow', node, from, to));
  }
  const order = { hollow: 0, wrong: 1, ridge: 2 } as const;
  return pieces.sort((a, b) => order[a.side] - order[b.side] || a.depth - b.depth);
}
