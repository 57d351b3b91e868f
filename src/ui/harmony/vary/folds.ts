import type { Lab } from '../../../colour/lab.ts';
import type { Mixed } from '../../../harmony/variant.ts';
import type { DrawnLadder } from '../../drawn/drawn.ts';

/** The colour moved as its pile moves: where the shelf makes no change, none is drawn. */
export function shifted(from: Lab, { origin, mixture }: Mixed): Lab {
  const [one, other] = [origin.mixture.lab, mixture.lab];
  const at = (i: 0 | 1 | 2) => from[i] + other[i] - one[i];
  return [Math.min(100, Math.max(0, at(0))), at(1), at(2)];
}

/** Half of a fold is hatched where the shelf goes part of the way. */
export const hatched = (ladder: DrawnLadder, made: Mixed | undefined): DrawnLadder =>
  made?.granted === 'part'
    ? ladder.map((step, i) => (i >= ladder.length / 2 ? { ...step, reachable: false } : step))
    : ladder;
