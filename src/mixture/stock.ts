import { BANDS } from '../colour/grid.ts';
import { D65 } from '../colour/observer.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';

/** Recipes hold at most this many pigments. */
export const MOST = 6;

/** A film needs some scattering for its formula; this much changes no colour (R = 5e-13 instead of 0). */
const LEAST_S = 1e-12;
/** Below this a paste neither absorbs nor scatters: a medium, which colours nothing. */
const LEAST_STRENGTH = 1e-7;

/**
 * The paints of a shelf laid out for a search: K and S in rows of BANDS, each paint scaled to unit
 * luminous strength 1 ÷ Σ ȳ(K + S), so that tinting strengths from 0.01 to 8 become comparable.
 */
export interface Stock {
  readonly count: number;
  readonly paints: readonly ShelfPaint[];
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** Paste, by volume, in one unit of effective amount. */
  readonly paste: Float64Array;
  /** Weights of D65 over its white. */
  readonly X: Float64Array;
  readonly Y: Float64Array;
  readonly Z: Float64Array;
  /** Rm = lead + gain·R ÷ (1 − k2·R). */
  readonly lead: number;
  readonly gain: number;
  readonly k2: number;
}

/** Whether a paint has any K or S at all. */
export const colours = ({ paint }: ShelfPaint): boolean => strengthOf(paint) > LEAST_STRENGTH;

/** Luminous strength of a unit of paste: Σ ȳ(K + S). */
export function strengthOf({ K, S }: ShelfPaint['paint']): number {
  let sum = 0;
  for (let b = 0; b < BANDS; b++) sum += (D65.Y[b]! / 100) * (K[b]! + S[b]!);
  return sum;
}

/**
 * @param paints those of the shelf that may be used, in the shelf's order
 * @param held paste that every mixture must hold, share of the whole by index; each paint is then
 *   replaced by its mixture with them, which keeps the search free of bounds (K and S add)
 */
export function compile(
  paints: readonly ShelfPaint[],
  { surface }: Pick<Shelf, 'surface'>,
  held: ReadonlyMap<number, number> = new Map(),
): Stock {
  const count = paints.length;
  const K = new Float64Array(count * BANDS);
  const S = new Float64Array(count * BANDS);
  const paste = new Float64Array(count);
  let free = 1;
  for (const share of held.values()) free -= share;
  for (let i = 0; i < count; i++) {
    let strength = 0;
    for (let b = 0; b < BANDS; b++) {
      let k = free * paints[i]!.paint.K[b]!;
      let s = free * Math.max(paints[i]!.paint.S[b]!, LEAST_S);
      for (const [j, share] of held) {
        k += share * paints[j]!.paint.K[b]!;
        s += share * paints[j]!.paint.S[b]!;
      }
      K[i * BANDS + b] = k;
      S[i * BANDS + b] = s;
      strength += (D65.Y[b]! / 100) * (k + s);
    }
    const scale = 1 / Math.max(strength, LEAST_STRENGTH);
    paste[i] = scale;
    for (let b = 0; b < BANDS; b++) {
      K[i * BANDS + b]! *= scale;
      S[i * BANDS + b]! *= scale;
    }
  }
  const over = (weights: Float64Array, white: number) => weights.map((w) => w / white);
  const { k1, k2, specular } = surface;
  return {
    count,
    paints,
    K,
    S,
    paste,
    X: over(D65.X, D65.white[0]),
    Y: over(D65.Y, D65.white[1]),
    Z: over(D65.Z, D65.white[2]),
    lead: specular === 'included' ? k1 : 0,
    gain: (1 - k1) * (1 - k2),
    k2,
  };
}
