import type { Lab } from '../../../colour/lab.ts';
import { isFollowed } from '../../../harmony/limit.ts';
import type { Mixed } from '../../../harmony/variant.ts';
import type { DrawnLadder } from '../../drawn/drawn.ts';
import { varySay } from '../../words/vary.ts';

/**
 * A colour (CIELAB) shifted by the difference between the two mixtures, so that the drawing shows
 * only changes that the shelf can make. L* is clamped to 0…100.
 */
export function shifted(from: Lab, { origin, mixture }: Mixed): Lab {
  const [one, other] = [origin.mixture.lab, mixture.lab];
  const at = (i: 0 | 1 | 2) => from[i] + other[i] - one[i];
  return [Math.min(100, Math.max(0, at(0))), at(1), at(2)];
}

/** Label and sign below a fold; none if only chroma falls short of a lighter or deeper variant. */
export const marksOf = (made: Mixed | undefined) =>
  made && !isFollowed(made)
    ? { mark: varySay.marks[made.granted], sign: varySay.signs[made.granted] }
    : {};

/** Hatches half of a fold if the shelf makes only part of the variant. */
export const hatched = (ladder: DrawnLadder, made: Mixed | undefined): DrawnLadder =>
  made?.granted === 'part' && !isFollowed(made)
    ? ladder.map((step, i) => (i >= ladder.length / 2 ? { ...step, reachable: false } : step))
    : ladder;
