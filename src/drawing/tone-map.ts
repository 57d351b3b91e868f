import type { PointGrid } from './contour-lines.ts';

/** Lit pieces of one cloth or one heap, with the light at each point. */
export interface LitGrid extends PointGrid {
  readonly light: Float64Array;
}

/** Maps light to a place on the ladder: 0 is the highlight, 5 the deepest fold. */
export type ToneMap = (light: number) => number;

/** Weight of a linear map from light to ladder, beside the map by area shares. */
const LINEAR_WEIGHT = 0.28;

/** Histogram bins of light for summing areas. */
const LIGHT_BINS = 512;

/** Usual share of each step, used when a ladder has no shares. */
const USUAL_SHARES = [0.07, 0.2, 0.31, 0.22, 0.13, 0.07] as const;

/**
 * Maps light to the ladder so that each step covers about its share of the visible area. The shares
 * are a mean of the ladder's own and the usual ones, because an extreme ladder would flatten the
 * folds.
 *
 * @param sheets all lit pieces; each counts by its area on the page
 * @param shares of the six steps, lightest first
 * @param trust weight of the ladder's own shares, 0…1
 */
export function toneMapOf(
  sheets: readonly LitGrid[],
  shares: readonly number[],
  trust = 0.5,
): ToneMap {
  const seen = new Float64Array(LIGHT_BINS);
  let all = 0;
  let lightest = Number.NEGATIVE_INFINITY;
  let darkest = Number.POSITIVE_INFINITY;
  for (const { light } of sheets) {
    for (const value of light) {
      lightest = Math.max(lightest, value);
      darkest = Math.min(darkest, value);
    }
  }
  const span = lightest - darkest || 1;
  for (const { columns, rows, x, y, light } of sheets) {
    for (let j = 0; j + 1 < rows; j++) {
      for (let i = 0; i + 1 < columns; i++) {
        const at = j * columns + i;
        const over = at + columns + 1;
        const area = Math.abs(
          ((x[over] ?? 0) - (x[at] ?? 0)) * ((y[over - 1] ?? 0) - (y[at + 1] ?? 0)) -
            ((x[over - 1] ?? 0) - (x[at + 1] ?? 0)) * ((y[over] ?? 0) - (y[at] ?? 0)),
        );
        const mean = ((light[at] ?? 0) + (light[over] ?? 0)) / 2;
        const bin = Math.min(LIGHT_BINS - 1, Math.floor(((lightest - mean) / span) * LIGHT_BINS));
        seen[bin] = (seen[bin] ?? 0) + area;
        all += area;
      }
    }
  }
  const given = shares.reduce((sum, share) => sum + Math.max(0, share), 0);
  const marks: number[] = [];
  let from = 0;
  for (let step = 0; step < 6; step++) {
    const usual = USUAL_SHARES[step] ?? 0;
    const own = given > 0 ? Math.max(0, shares[step] ?? 0) / given : usual;
    const share = own * trust + usual * (1 - trust);
    marks.push(from + share / 2);
    from += share;
  }
  const lights: number[] = [];
  let sum = 0;
  for (let bin = 0; bin < LIGHT_BINS; bin++) {
    const area = (seen[bin] ?? 0) / (all || 1);
    while (lights.length < 6 && sum + area >= (marks[lights.length] ?? 1)) {
      const part = area > 0 ? ((marks[lights.length] ?? 1) - sum) / area : 0;
      lights.push(lightest - ((bin + part) / LIGHT_BINS) * span);
    }
    sum += area;
  }
  while (lights.length < 6) lights.push(darkest);
  // Where much of the cloth is flat, shares alone would exaggerate slight unevenness.
  for (let step = 0; step < 6; step++) {
    lights[step] =
      LINEAR_WEIGHT * (lightest - ((step + 0.4) / 5.8) * span) +
      (1 - LINEAR_WEIGHT) * (lights[step] ?? 0);
  }
  return (light) => {
    const first = lights[0] ?? 1;
    if (light >= first) return 0;
    for (let step = 1; step < 6; step++) {
      const high = lights[step - 1] ?? 0;
      const low = lights[step] ?? 0;
      if (light >= low) return step - (high > low ? (light - low) / (high - low) : 0);
    }
    return 5;
  };
}
