import type { Lab } from '../colour/lab.ts';

/** Six steps, lightest first. Reflected light and trim stand outside this order. */
export const STEPS = [
  'highlight',
  'light',
  'local colour',
  'half-tone',
  'shadow',
  'deepest fold',
] as const;
export type Step = (typeof STEPS)[number];

export interface LadderStep {
  readonly step: Step;
  readonly lab: Lab;
  /** Share of the colour's own area, 0…1. */
  readonly share: number;
}

/** One thing's colour in a photograph. */
export interface GatheredColour {
  /** Plain words, different for each colour of a harmony. */
  readonly name: string;
  /** Local colour: the median of L*, of a* and of b* over all its pixels, light and shadow. */
  readonly lab: Lab;
  /** Share of the area looked at, 0…1. */
  readonly share: number;
  /** Small, and far from everything else. */
  readonly accent: boolean;
  /** Six steps as they are in the photograph, lightness never rising. */
  readonly ladder: readonly LadderStep[];
}

/** Where each colour lives: one byte a cell, the colour's index, 255 where nothing was looked at. */
export interface LabelMap {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export interface Gathered {
  readonly width: number;
  readonly height: number;
  /** By share, accents last. */
  readonly colours: readonly GatheredColour[];
  readonly labels: LabelMap;
  /** Plain sentences: what was odd about the photograph. */
  readonly remarks: readonly string[];
}
