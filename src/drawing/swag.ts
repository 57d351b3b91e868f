import { CLOTH_DETAIL } from './cloth-geometry.ts';
import { type ClothSurface, clothSurface, type SurfaceSection } from './cloth-surface.ts';
import { type RandomGenerator, randomBetween } from './drawing-seed.ts';
import type { Detail } from './drawn-ladder.ts';

/**
 * Cloth slung between two pegs: nested hanging curves that gather at both.
 *
 * @param slack sag of the upper and of the lower edge, drawing units
 * @param folds number of whole folds
 * @param next seeded random generator
 */
export function swag(
  left: { x: number; y: number },
  right: { x: number; y: number },
  slack: { above: number; below: number },
  folds: number,
  next: RandomGenerator,
  detail: Detail,
): ClothSurface {
  const flanks = folds * 2 + 1;
  const wave = Array.from({ length: flanks }, (_, k) => ({
    left: randomBetween(next, 0.6, 1.4) * (1 + 0.5 * (k / flanks)),
    right: randomBetween(next, 0.6, 1.4) * (1 + 0.5 * (k / flanks)),
    swing: randomBetween(next, 1.1, 1.8),
    side: Math.floor(next() * 3),
  }));
  for (let k = 0; k + 1 < flanks; k += 2) {
    const one = wave[k];
    const other = wave[k + 1];
    if (one && other) other.side = one.side;
  }
  const lowest = randomBetween(next, 0.42, 0.58);
  const start = randomBetween(next, 0, 6);
  const section: SurfaceSection = {
    flanks,
    first: 1,
    cloth: (flank, v) => {
      const w = wave[flank];
      return w ? w.left + (w.right - w.left) * v : 1;
    },
    swing: (flank, v) => {
      const w = wave[flank];
      if (!w) return 1;
      // A fold that starts at one peg fades out before it reaches the other.
      const kept = w.side === 0 ? 1 : w.side === 1 ? 1.1 - v : 0.1 + v;
      const near = Math.min(1, kept * 1.9);
      return w.swing * (0.3 + 0.7 * near * near * (3 - 2 * near));
    },
    place: (across, out, v, s) => {
      // The deepest point need not be midway.
      const u = v ** (Math.log(0.5) / Math.log(lowest));
      const bow = 4 * u * (1 - u);
      const sag = slack.above + (slack.below - slack.above) * across ** 1.1;
      const round = bow ** (1 - 0.4 * across);
      const span = (slack.below - slack.above) * round + 10;
      const z = span * (out + 0.012 * Math.sin(7 * v + 9 * s + start));
      return [
        left.x + (right.x - left.x) * v,
        left.y +
          (right.y - left.y) * v +
          sag * round +
          12 * (across - 0.5) * (1 - bow) +
          0.1 * span * out,
        z,
      ];
    },
  };
  return clothSurface(section, CLOTH_DETAIL[detail].weave);
}
