import { BANDS } from '../../colour/grid.ts';
import { D65 } from '../../colour/observer.ts';
import type { Shelf, ShelfPaint } from '../../pigment/shelf.ts';

/** Maximum number of pigments in a recipe. */
export const MOST_PIGMENTS = 6;

/** Floor of S, so that the formula stays defined; changes no colour (R = 5e-13 instead of 0). */
const LEAST_S = 1e-12;
/** Tinting strength below which a paste is a medium, which neither absorbs nor scatters. */
const LEAST_STRENGTH = 1e-7;

/**
 * The paints of a shelf compiled for a search: K and S in rows of BANDS, each paint scaled by 1 ÷ Σ
 * ȳ(K + S) to unit luminous strength, so that tinting strengths from 0.01 to 8 become comparable.
 * Amounts of scaled paints are called effective amounts.
 */
export interface CompiledShelf {
  readonly count: number;
  readonly paints: readonly ShelfPaint[];
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** Volume of paste in one unit of effective amount, per paint. */
  readonly paste: Float64Array;
  /** Tristimulus weights of D65, divided by its white. */
  readonly X: Float64Array;
  readonly Y: Float64Array;
  readonly Z: Float64Array;
  /** Saunderson correction: Rm = lead + gain·R ÷ (1 − k2·R). */
  readonly lead: number;
  readonly gain: number;
  readonly k2: number;
}

/** Whether a paint has any absorption or scattering. */
export const hasColour = ({ paint }: ShelfPaint): boolean =>
  paintStrengthOf(paint) > LEAST_STRENGTH;

/** Luminous tinting strength per volume of paste: Σ ȳ(K + S), weighted for D65. */
export function paintStrengthOf({ K, S }: ShelfPaint['paint']): number {
  let sum = 0;
  for (let b = 0; b < BANDS; b++) sum += (D65.Y[b]! / 100) * (K[b]! + S[b]!);
  return sum;
}

/**
 * Compiles paints for a search into new arrays.
 * @param paints the paints that may be used, in the shelf's order
 * @param held   required paste: share of the whole by paint index. Each paint is replaced by its
 *   mixture with the required ones, so that the search needs no bounds (K and S add)
 */
export function compileShelf(
  paints: readonly ShelfPaint[],
  { surface }: Pick<Shelf, 'surface'>,
  held: ReadonlyMap<number, number> = new Map(),
): CompiledShelf {
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
