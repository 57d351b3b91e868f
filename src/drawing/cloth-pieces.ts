import { type ClothSurface, interpolate } from './cloth-surface.ts';
import type { PointGrid } from './contour-lines.ts';

/** One visible piece of a weave: a ridge, a hollow, or the wrong side where a fold doubles back. */
export interface Piece extends PointGrid {
  readonly side: 'ridge' | 'hollow' | 'wrong';
  /**
   * Number of the ridge, hollow or half fold; equal for the same piece in another cut of the weave.
   */
  readonly which: number;
  /**
   * Mean depth towards the viewer; within a side, pieces are painted from the least to the
   * greatest.
   */
  readonly depth: number;
  readonly light: Float64Array;
}

/** How a weave is cut into pieces. */
interface PieceCut {
  /** Start and end of the cloth along the fold, in v, at position s (0…1) across it. */
  readonly from?: (s: number) => number;
  readonly to: (s: number) => number;
  /** Points across and along each piece. */
  readonly columns: number;
  readonly rows: number;
  /** True if the wrong side is never visible, as in a swag. */
  readonly oneSided?: boolean;
}

/** Intervals of 0…1 in which a condition holds, found by 40 steps. */
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

/**
 * Cuts a weave where folds turn away from the viewer, so that no piece covers itself. Pieces are
 * ordered from back to front.
 */
export function piecesOf(woven: ClothSurface, cut: PieceCut): Piece[] {
  const { section } = woven;
  /** Distance from the middle of a half fold, 0…0.5 of it, at which the cloth turns away. */
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
        // Fixed-point iteration: the hem depends on the position across the cloth, which depends on
        // v.
        for (let round = 0; round < 3; round++) {
          s = (from(v) * (1 - t) + to(v) * t) / flanks;
          const begin = Math.min(most, cut.to(s), Math.max(least, cut.from?.(s) ?? 0));
          const end = Math.max(begin, Math.min(most, cut.to(s)));
          v = begin + ((end - begin) * j) / (cut.rows - 1);
        }
        const at = j * cut.columns + i;
        px[at] = interpolate(woven, woven.x, s, v);
        py[at] = interpolate(woven, woven.y, s, v);
        light[at] = interpolate(woven, woven.light, s, v);
        depth += interpolate(woven, woven.z, s, v) / size;
      }
    }
    return { columns: cut.columns, rows: cut.rows, x: px, y: py, light, side, which, depth };
  };
  const pieces: Piece[] = [];
  for (let flank = 0; flank < flanks; flank++) {
    // The wrong side is visible only near the hem; higher up it stays under its ridge.
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
    // Extend hollows under their ridges where the cloth does not double back, or the wall would
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

/**
 * The strip along the last edge of a weave.
 *
 * @param part its width as a fraction of the last half fold
 */
export function edgeStrip(woven: ClothSurface, part: number, rows: number): Piece {
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
      strip.x[at] = interpolate(woven, woven.x, s, v);
      strip.y[at] = interpolate(woven, woven.y, s, v);
      strip.light[at] = interpolate(woven, woven.light, s, v);
    }
  }
  return { columns: 4, rows, ...strip, side: 'ridge', which: section.flanks, depth: columns };
}
