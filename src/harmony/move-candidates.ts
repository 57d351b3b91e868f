import { deltaE00 } from '../colour/difference.ts';
import { angleDeg, chroma, type Lab } from '../colour/lab.ts';
import type { ShelfGamut } from '../mixture/shelf-gamut.ts';
import { type HarmonyMove, moveAll } from './harmony-move.ts';

/** Grid of moves: rotation in degrees, factor on lightness differences, shift of L*. */
const TURNS = [0, -4, 4, -8, 8, -12, 12];
const FACTORS = [1, 0.92, 0.84, 0.76, 0.68, 0.6, 0.5, 0.4];
const SHIFTS = [0, -2, 2, -4, 4, -7, 7, -11, 11, -16, 16];
/** Toll per degree of rotation, CIEDE2000: it changes the temperature of every colour. */
const PER_DEGREE = 0.15;
/** Toll for flattening lightness, CIEDE2000: lightness differences carry the drawing. */
const PER_FACTOR = 8;
/** Number of moves that the full search then tries. */
const SHORTLIST = 5;
/** Factor by which the approximate gamut may overstate chroma. */
const ROUGH = 1.04;

const movePenalty = ({ turnDeg, lightness }: HarmonyMove): number =>
  PER_DEGREE * Math.abs(turnDeg) + PER_FACTOR * (1 - lightness) ** 2;

/** Cost of a move: mean difference over the colours, plus the tolls. */
export function costOf(colours: readonly Lab[], move: HarmonyMove): number {
  const to = moveAll(colours, move);
  return (
    colours.reduce((sum, lab, i) => sum + deltaE00(lab, to[i]!), 0) / colours.length +
    movePenalty(move)
  );
}

/** The cheapest moves that the approximate gamut of the shelf allows. */
export function shortlist(colours: readonly Lab[], solid: ShelfGamut): HarmonyMove[] {
  const found: { move: HarmonyMove; cost: number }[] = [];
  for (const turnDeg of TURNS) {
    for (const lightness of FACTORS) {
      for (const shift of SHIFTS) {
        const factor = mostChroma(colours, { lightness, shift, chroma: 1, turnDeg }, solid);
        if (factor === null) continue;
        const move = { lightness, shift, chroma: factor, turnDeg };
        found.push({ move, cost: costOf(colours, move) });
      }
    }
  }
  // Not even greys fit: compress the range into the middle of the shelf's.
  if (found.length === 0) {
    const mean = colours.reduce((sum, [L]) => sum + L, 0) / colours.length;
    const shift = (solid.darkest + solid.lightest) / 2 - mean;
    found.push({ move: { lightness: 0.1, shift, chroma: 0.1, turnDeg: 0 }, cost: 0 });
  }
  found.sort((a, b) => a.cost - b.cost);
  // Neighbours on the grid cost nearly the same: keep one of each kind.
  const kinds = new Set<string>();
  return found
    .filter(({ move }) => {
      const kind = `${move.turnDeg} ${Math.round(move.lightness * 4)} ${Math.round(move.shift / 5)}`;
      return kinds.size < SHORTLIST && !kinds.has(kind) && kinds.add(kind);
    })
    .map(({ move }) => move);
}

/**
 * Largest chroma factor up to 1 that brings every colour into the gamut; null if not even greys
 * fit.
 */
function mostChroma(colours: readonly Lab[], move: HarmonyMove, solid: ShelfGamut): number | null {
  let factor = 1;
  for (const to of moveAll(colours, move)) {
    const reach = solid.reach(to[0], angleDeg(to[1], to[2]));
    if (reach < 0) return null;
    const C = chroma(to);
    if (C > ROUGH * reach) factor = Math.min(factor, (ROUGH * reach) / C);
  }
  return factor;
}
