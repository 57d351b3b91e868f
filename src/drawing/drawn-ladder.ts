import type { Step } from '../harmony/harmony.ts';

/** One step of a ladder, ready to draw. */
interface DrawnStep {
  readonly step: Step;
  /** Display colour for CSS from shownOf(): not always #rrggbb. */
  readonly hex: string;
  /** Share of the cloth's area, 0…1; if all are 0, a usual distribution applies. */
  readonly share: number;
  /** Whether the shelf can mix the step; false is hatched. */
  readonly reachable: boolean;
}

/** Six steps, lightest first: highlight, light, local colour, half-tone, shadow, deepest fold. */
export type DrawnLadder = readonly DrawnStep[];

/** How a garment hangs; default: the seed decides. */
export type Hang = 'one peg' | 'two pegs' | 'strip';

/**
 * Level of detail of the folds: 'fine' for a large picture, 'plain' for a card, 'small' for a
 * strip.
 */
export type Detail = 'fine' | 'plain' | 'small';
