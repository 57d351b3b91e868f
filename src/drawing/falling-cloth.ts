import { CLOTH_DETAIL, type ClothLength } from './cloth-geometry.ts';
import { piecesOf } from './cloth-pieces.ts';
import { type ClothSurface, clothSurface, type SurfaceSection } from './cloth-surface.ts';
import { type RandomGenerator, randomBetween } from './drawing-seed.ts';
import type { Detail } from './drawn-ladder.ts';

/** Geometry of a cloth that falls from one peg, in drawing units. */
interface FallingClothShape {
  readonly peg: { readonly x: number; readonly y: number };
  /** Greatest width, drawing units. */
  readonly wide: number;
  /** Length of the longest thread, drawing units. */
  readonly long: number;
  /** Position of the peg across the cloth, 0 (left) to 1 (right). */
  readonly anchor: number;
  /** Sideways drift of the lower end, drawing units. */
  readonly lean: number;
  /** Number of whole folds. */
  readonly folds: number;
  /** Length of the thread at position s (0…1) across the cloth, as a fraction of the longest. */
  readonly hem: (s: number) => number;
  /** Range of the steepest fold direction at the lower end, radians. */
  readonly swing: readonly [number, number];
  /** Phase of the soft waves along the cloth, radians. */
  readonly start: number;
}

/**
 * Cloth that falls from one peg: folds are narrow at the peg, widen downward, and some fade out.
 *
 * @param next seeded random generator
 * @returns the lit surface and its hem
 */
export function fallingCloth(
  shape: FallingClothShape,
  next: RandomGenerator,
  detail: Detail,
): { woven: ClothSurface; hem: (s: number) => number } {
  const flanks = shape.folds * 2 + (next() < 0.5 ? 1 : 0);
  const wave = Array.from({ length: flanks }, () => ({
    above: randomBetween(next, 0.55, 1.1) * (next() < 0.3 ? 1.7 : 1),
    below: randomBetween(next, 0.7, 1.45),
    swingAbove: randomBetween(next, 0.95, 1.4),
    swingBelow: randomBetween(next, shape.swing[0], shape.swing[1]),
    dies: next() < 0.25,
    where: randomBetween(next, 0.3, 0.7),
  }));
  // Both halves of a fold fade together, or its ridge would become a step.
  for (let k = 0; k + 1 < flanks; k += 2) {
    const one = wave[k];
    const other = wave[k + 1];
    if (one && other) {
      other.dies = one.dies;
      other.where = one.where;
    }
  }
  const sway = randomBetween(next, -0.01, 0.01) * shape.wide;
  // The free edges turn back narrow and never lie flat.
  for (const edge of [wave[0], wave.at(-1)]) {
    if (!edge) continue;
    edge.dies = false;
    edge.below *= 0.4;
  }
  const ripple = randomBetween(next, 0.6, 1.3);
  const section: SurfaceSection = {
    flanks,
    first: next() < 0.5 ? 1 : -1,
    turn: 0.2,
    cloth: (flank, v) => {
      const w = wave[flank] ?? { above: 1, below: 1 };
      return w.above * (1 + (w.below - 1) * v);
    },
    swing: (flank, v) => {
      const w = wave[flank];
      if (!w) return 1;
      const angle = w.swingAbove + (w.swingBelow - w.swingAbove) * v ** 0.8;
      if (!w.dies) return angle;
      const gone = Math.min(1, Math.max(0, (v - w.where) / 0.4));
      return angle * (1 - 0.65 * gone * gone * (3 - 2 * gone));
    },
    place: (across, out, v, s) => {
      const spread = shape.wide * (0.05 + 0.95 * v ** 0.7);
      const x =
        shape.peg.x +
        shape.lean * v ** 1.4 +
        sway * Math.sin(v * 4.2 + shape.start) * v +
        spread * (across - shape.anchor);
      // Cloth is never quite plumb: long soft waves along the folds vary their lights.
      const wave =
        Math.sin(2 * Math.PI * (ripple * v + 0.9 * s) + shape.start) +
        0.6 * Math.sin(2 * Math.PI * (2.3 * ripple * v - 1.7 * s) + 2 * shape.start);
      const z = spread * (out + 0.013 * wave * v);
      return [x, shape.peg.y + shape.long * v + 0.17 * spread * out, z];
    },
  };
  return { woven: clothSurface(section, CLOTH_DETAIL[detail].weave), hem: shape.hem };
}

/**
 * The bunch of cloth above a peg, where it was pinched for pinning.
 *
 * @param size height of the bunch, drawing units
 */
export function pinchedCloth(
  peg: { x: number; y: number },
  size: number,
  next: RandomGenerator,
  detail: Detail,
): ClothLength {
  const folds = 2;
  const wave = Array.from({ length: folds * 2 }, () => randomBetween(next, 0.7, 1.4));
  const tips = Array.from({ length: 8 }, () => randomBetween(next, 0.4, 1));
  const woven = clothSurface(
    {
      flanks: folds * 2,
      first: 1,
      cloth: (flank) => wave[flank] ?? 1,
      swing: () => 1.4,
      place: (across, out, v) => {
        const spread = size * (0.3 + 0.75 * v);
        const z = spread * out;
        return [peg.x + spread * (across - 0.5), peg.y - size * v + 0.12 * z, z];
      },
    },
    16,
  );
  const { columns } = CLOTH_DETAIL[detail];
  const hem = (s: number) => {
    const at = s * (tips.length - 1);
    const k = Math.min(tips.length - 2, Math.floor(at));
    const a = tips[k] ?? 1;
    return a + ((tips[k + 1] ?? 1) - a) * (at - k);
  };
  return { pieces: piecesOf(woven, { to: hem, columns, rows: 8 }), band: [] };
}
