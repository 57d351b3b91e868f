import { angleDeg, chroma, type Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { compileShelf, hasColour } from './search/compiled-shelf.ts';
import { MixtureEvaluator } from './search/mixture-evaluator.ts';

const L_STEP = 2.5;
const H_STEP = 7.5;
const L_BINS = 100 / L_STEP + 1;
const H_BINS = 360 / H_STEP;
/** Sampled effective amounts: natural logarithms relative to the strongest. */
const FINE = [-0.3, -0.8, -1.4, -2.1, -3, -4, -5.2];
const WIDE = [0, -1.2, -3, -5];

/**
 * Approximate gamut of a shelf: maximum chroma by lightness and hue, sampled from its pairs and
 * triples, which form the gamut boundary. For quick estimates; the search decides what is
 * reachable.
 */
export interface ShelfGamut {
  /** Maximum C*ab at a lightness and CIELAB hue angle; below 0 outside `darkest`…`lightest`. */
  reach(L: number, hDeg: number): number;
  readonly darkest: number;
  readonly lightest: number;
}

/** Samples the gamut of a shelf; time grows with the cube of the number of paints. */
export function shelfGamutOf(shelf: Shelf): ShelfGamut {
  const paints = shelf.paints.filter(hasColour);
  const stock = compileShelf(paints, shelf);
  const evaluator = new MixtureEvaluator(stock);
  const most = new Float64Array(L_BINS * H_BINS).fill(-1);
  let darkest = 100;
  let lightest = 0;
  const look = (members: readonly number[], x: readonly number[]) => {
    evaluator.n = members.length;
    evaluator.members.set(members);
    evaluator.x.set(x);
    evaluator.evaluateColour();
    const lab: Lab = [evaluator.L, evaluator.a, evaluator.b];
    darkest = Math.min(darkest, evaluator.L);
    lightest = Math.max(lightest, evaluator.L);
    const bin = Math.round(clamp(evaluator.L) / L_STEP) * H_BINS + hueBin(angleDeg(lab[1], lab[2]));
    most[bin] = Math.max(most[bin]!, chroma(lab));
  };
  for (let i = 0; i < stock.count; i++) {
    look([i], [0]);
    for (let j = i + 1; j < stock.count; j++) {
      look([i, j], [0, 0]);
      for (const x of FINE) {
        look([i, j], [0, x]);
        look([i, j], [x, 0]);
      }
      for (let k = j + 1; k < stock.count; k++)
        for (const x of WIDE)
          for (const y of WIDE) {
            look([i, j, k], [0, x, y]);
            if (x < 0) look([i, j, k], [x, 0, y]);
            if (x < 0 && y < 0) look([i, j, k], [x, y, 0]);
          }
    }
  }
  const filled = fill(most);
  return {
    darkest,
    lightest,
    reach(L, hDeg) {
      if (L < darkest || L > lightest) return -1;
      const at = (row: number) => filled[row * H_BINS + hueBin(hDeg)]!;
      const low = Math.floor(clamp(L) / L_STEP);
      const high = Math.min(low + 1, L_BINS - 1);
      const share = clamp(L) / L_STEP - low;
      return at(low) * (1 - share) + at(high) * share;
    },
  };
}

/** Fills empty bins with the mean of their neighbours in hue and lightness, 0 without any. */
function fill(most: Float64Array): Float64Array {
  const filled = most.slice();
  for (let row = 0; row < L_BINS; row++) {
    for (let h = 0; h < H_BINS; h++) {
      if (most[row * H_BINS + h]! >= 0) continue;
      let sum = 0;
      let count = 0;
      for (const [r, d] of [
        [row, -1],
        [row, 1],
        [row - 1, 0],
        [row + 1, 0],
      ] as const) {
        if (r < 0 || r >= L_BINS) continue;
        const value = most[r * H_BINS + ((h + d + H_BINS) % H_BINS)]!;
        if (value < 0) continue;
        sum += value;
        count++;
      }
      filled[row * H_BINS + h] = count > 0 ? sum / count : 0;
    }
  }
  return filled;
}

const clamp = (L: number): number => Math.min(100, Math.max(0, L));
const hueBin = (hDeg: number): number => Math.round(hDeg / H_STEP) % H_BINS;
