import type { Step } from '../../harmony/harmony.ts';

/** One step of a ladder as it is drawn: a finished display colour, its share, and whether the shelf reaches it. */
export interface DrawnStep {
  readonly step: Step;
  /** What the screen is told to show, of shownOf(): not always #rrggbb. */
  readonly hex: string;
  /** Share of the cloth's own area, 0…1; all 0 falls back to a usual distribution. */
  readonly share: number;
  /** False is hatched. */
  readonly reachable: boolean;
}

/** Six steps, lightest first: highlight, light, local colour, half-tone, shadow, deepest fold. */
export type DrawnLadder = readonly DrawnStep[];

/** How a garment hangs. Left out, the seed decides. */
export type Hang = 'one peg' | 'two pegs' | 'strip';

/** How finely folds are worked out: 'fine' for a large picture, 'plain' for a card, 'small' for a strip. */
export type Detail = 'fine' | 'plain' | 'small';
