import type { Lab } from '../../../colour/lab.ts';
import { isFollowed } from '../../../harmony/limit.ts';
import type { Mixed } from '../../../harmony/variant.ts';
import type { DrawnLadder } from '../../drawn/drawn.ts';
import { varySay } from '../../words/vary.ts';

/** The colour moved as its pile moves: where the shelf makes no change, none is drawn. */
export function shifted(from: Lab, { origin, mixture }: Mixed): Lab {
  const [one, other] = [origin.mixture.lab, mixture.lab];
  const at = (i: 0 | 1 | 2) => from[i] + other[i] - one[i];
  return [Math.min(100, Math.max(0, at(0))), at(1), at(2)];
}

/** What is written under a fold; nothing where its chroma only follows what the shelf has at that depth. */
export const marksOf = (made: Mixed | undefined) =>
  made && !isFollowed(made)
    ? { mark: varySay.marks[made.granted], sign: varySay.signs[made.granted] }
    : {};

/** Half of a fold is hatched where the shelf goes part of the way. */
export const hatched = (ladder: DrawnLadder, made: Mixed | undefined): DrawnLadder =>
  made?.granted === 'part' && !isFollowed(made)
    ? ladder.map((step, i) => (i >= ladder.length / 2 ? { ...step, reachable: false } : step))
    : ladder;
