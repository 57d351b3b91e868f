import type { Lab } from '../../colour/lab.ts';
import type { LadderStep } from '../../harmony/harmony.ts';
import type { DrawnLadder } from '../drawn/drawn.ts';
import { shownOf } from '../drawn/screen.ts';

/** A ladder in display colours. */
export const drawn = (ladder: readonly LadderStep[], reachable = true): DrawnLadder =>
  ladder.map(({ step, lab, share }) => ({ step, share, reachable, hex: shownOf(lab) }));

/** A ladder moved as its local colour moves. */
export const moved = (ladder: readonly LadderStep[], from: Lab, to: Lab): LadderStep[] =>
  ladder.map(({ step, lab: [L, a, b], share }) => ({
    step,
    share,
    lab: [
      Math.min(100, Math.max(0, L + to[0] - from[0])),
      a + to[1] - from[1],
      b + to[2] - from[2],
    ],
  }));
