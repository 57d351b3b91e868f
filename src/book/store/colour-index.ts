import { deltaE00Of } from '../../colour/difference.ts';
import type { Lab } from '../../colour/lab.ts';

/** Edge length of a cell of the index, in units of L*, a* and b*. */
const EDGE = 6;
const POW_25_7 = 25 ** 7;

/** Spatial index of colours: cells of CIELAB, each colour with its owner. */
export interface ColourIndex {
  /**
   * Visits every colour within CIEDE2000 `within` of `lab`, unordered, with its owner and
   * difference.
   */
  near(lab: Lab, within: number, visit: (owner: number, deltaE00: number) => void): void;
  /** How many colours the last call of `near` compared; lets a test see that the index prunes. */
  readonly looked: number;
}

/**
 * Builds an index for range queries in CIEDE2000. A query skips a cell when a lower bound shows
 * that no colour in it is near enough, and measures all others exactly, so it finds the same
 * colours as a full scan.
 * @param colours finite CIELAB values, each with the number of the entry that owns it; copied
 */
export function createColourIndex(colours: readonly { lab: Lab; owner: number }[]): ColourIndex {
  const members = new Map<string, number[]>();
  colours.forEach(({ lab }, i) => {
    const key = lab.map((value) => Math.floor(value / EDGE)).join(' ');
    const held = members.get(key);
    if (held) held.push(i);
    else members.set(key, [i]);
  });
  const order = [...members.values()];
  const values = new Float64Array(colours.length * 3);
  const owners = new Uint32Array(colours.length);
  const bounds = new Float64Array(order.length * 6);
  const ends = new Uint32Array(order.length);
  let at = 0;
  order.forEach((cell, c) => {
    for (let axis = 0; axis < 3; axis++) {
      bounds[c * 6 + axis] = Number.POSITIVE_INFINITY;
      bounds[c * 6 + 3 + axis] = Number.NEGATIVE_INFINITY;
    }
    for (const i of cell) {
      const { lab, owner } = colours[i]!;
      lab.forEach((value, axis) => {
        values[at * 3 + axis] = value;
        bounds[c * 6 + axis] = Math.min(bounds[c * 6 + axis]!, value);
        bounds[c * 6 + 3 + axis] = Math.max(bounds[c * 6 + 3 + axis]!, value);
      });
      owners[at++] = owner;
    }
    ends[c] = at;
  });

  let looked = 0;
  return {
    get looked() {
      return looked;
    },
    near([L, a, b], within, visit) {
      looked = 0;
      let from = 0;
      for (let c = 0; c < ends.length; c++) {
        const to = ends[c]!;
        if (leastDifference(L, a, b, bounds, c * 6) <= within) {
          looked += to - from;
          for (let i = from; i < to; i++) {
            const difference = deltaE00Of(L, a, b, ...at3(values, i * 3));
            if (difference <= within) visit(owners[i]!, difference);
          }
        }
        from = to;
      }
    },
  };
}

const at3 = (values: Float64Array, i: number): [number, number, number] => [
  values[i]!,
  values[i + 1]!,
  values[i + 2]!,
];

/**
 * Lower bound of the CIEDE2000 difference between a colour and any colour in a box. With ΔE² = tL²
 * + tC² + tH² + RT·tC·tH:
 *
 * - tL is at least the gap in L* divided by the greatest S_L between the query and the box;
 * - |RT| ≤ R < 2, so the remaining terms are at least (1 − R/2)(tC² + tH²);
 * - S_H ≤ S_C, so tC² + tH² is at least (ΔC′² + ΔH′²) / S_C². ΔC′² + ΔH′² is the squared distance
 *   in a′b′, which is at least that in a*b*, because a′ = (1 + G)a* with one G for both colours.
 *
 * S_C and R grow with mean chroma, so the box's farthest corner bounds them.
 *
 * @param box bounds of all boxes: minimum L*, a*, b*, then maximum L*, a*, b*
 * @param i   index in `box` of this box's first bound
 */
function leastDifference(L: number, a: number, b: number, box: Float64Array, i: number): number {
  const gapL = gap(L, box[i]!, box[i + 3]!);
  const farL = Math.max(off50((L + box[i]!) / 2), off50((L + box[i + 3]!) / 2));
  const tL = gapL / (1 + (0.015 * farL) / Math.sqrt(20 + farL));

  const gapA = gap(a, box[i + 1]!, box[i + 4]!);
  const gapB = gap(b, box[i + 2]!, box[i + 5]!);
  const farA = Math.max(Math.abs(box[i + 1]!), Math.abs(box[i + 4]!));
  const farB = Math.max(Math.abs(box[i + 2]!), Math.abs(box[i + 5]!));
  // 1 + G is at most 1.5.
  const meanC = (1.5 * (Math.sqrt(a * a + b * b) + Math.sqrt(farA * farA + farB * farB))) / 2;
  const c7 = meanC ** 7;
  const R = Math.sin(Math.PI / 3) * 2 * Math.sqrt(c7 / (c7 + POW_25_7));
  const tAB = (1 - R / 2) * ((gapA * gapA + gapB * gapB) / (1 + 0.045 * meanC) ** 2);
  // A small margin, so that neither rounding nor underflow of the squares excludes a colour that
  // lies just within.
  return Math.sqrt(tL * tL + tAB) * (1 - 1e-9) - 1e-9;
}

const gap = (x: number, from: number, to: number): number =>
  x < from ? from - x : x > to ? x - to : 0;
const off50 = (L: number): number => (L - 50) * (L - 50);
