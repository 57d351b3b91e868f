import type { Lab } from '../../colour/lab.ts';
import type { DrawnLadder } from '../../drawing/drawn-ladder.ts';
import type { LadderStep } from '../../harmony/harmony.ts';
import { cssColourOf } from './screen-colour.ts';

/** A value ladder in display colours, for drawing. */
export const displayLadder = (ladder: readonly LadderStep[], reachable = true): DrawnLadder =>
  ladder.map(({ step, lab, share }) => ({ step, share, reachable, hex: cssColourOf(lab) }));

/**
 * A value ladder shifted by the difference between two local colours, CIELAB. L* is clamped to
 * 0…100.
 */
export const shiftLadder = (ladder: readonly LadderStep[], from: Lab, to: Lab): LadderStep[] =>
  ladder.map(({ step, lab: [L, a, b], share }) => ({
    step,
    share,
    lab: [
      Math.min(100, Math.max(0, L + to[0] - from[0])),
      a + to[1] - from[1],
      b + to[2] - from[2],
    ],
  }));
