import type { Lab } from '../colour/lab.ts';

/** The six steps of a ladder, lightest first. Reflected light and trim are outside this order. */
export const LADDER_STEPS = [
  'highlight',
  'light',
  'local colour',
  'half-tone',
  'shadow',
  'deepest fold',
] as const;
export type Step = (typeof LADDER_STEPS)[number];

/** One step of a colour's ladder. */
export interface LadderStep {
  readonly step: Step;
  readonly lab: Lab;
  /** Share of the colour's own area, 0…1. */
  readonly share: number;
}

/** The colour of one object in a photograph. */
export interface GatheredColour {
  /** Plain words, unique within a harmony. */
  readonly name: string;
  /**
   * Local colour: median of L*, of a* and of b* over all its pixels in light and shadow (CIELAB,
   * D65).
   */
  readonly lab: Lab;
  /** Share of the included area, 0…1. */
  readonly share: number;
  /** Small and unlike every other colour. */
  readonly accent: boolean;
  /** Six steps measured in the photograph; lightness never rises. */
  readonly ladder: readonly LadderStep[];
}

/** Region of each colour: one byte per cell, the index of its colour; 255 if excluded. */
export interface LabelMap {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What is unusual in a photograph; shares are 0…1 of the included area. */
export type GatherRemark =
  | { readonly code: 'tiny-photograph' }
  | { readonly code: 'few-pixels' }
  | { readonly code: 'blown-out'; readonly share: number }
  | { readonly code: 'lost-in-black'; readonly share: number }
  | { readonly code: 'one-colour' }
  | { readonly code: 'fewer-colours'; readonly requested: number; readonly found: number }
  | { readonly code: 'grey' };

/** The harmony of a photograph; width and height are the photograph's, in pixels. */
export interface Gathered {
  readonly width: number;
  readonly height: number;
  /** By share, accents last. */
  readonly colours: readonly GatheredColour[];
  readonly labels: LabelMap;
  readonly remarks: readonly GatherRemark[];
}
