import type { Lab } from '../colour/lab.ts';
import type { Step } from '../harmony/harmony.ts';
import type { Declared } from '../harmony/period-family.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import type { MixFault } from '../mixture/search-options.ts';
import type { BlackRule } from './black-rule.ts';
import type { ClothRemark } from './drapery-remarks.ts';
import type { Fabric } from './fabric.ts';

/** Ways to model a cloth; the painter chooses. */
export const DRAPERY_WAYS = [
  'as nature had it',
  'deepened in its own hue',
  'shot cloth',
  'underpaint and glaze',
] as const;
export type DraperyWay = (typeof DRAPERY_WAYS)[number];

/** What the painter wants of a cloth. Colours are CIELAB under D65. */
export interface ClothRequest {
  readonly name: string;
  /** The local colour; for shot cloth, the colour of its lights. */
  readonly lab: Lab;
  readonly way: DraperyWay;
  readonly stuff: Fabric;
  /** Space the steps evenly, instead of as the fabric does. */
  readonly even?: boolean;
  /** `as nature had it`: the six steps of the photograph, lightest first. */
  readonly ladder?: readonly Lab[];
  /** `shot cloth`: the colour of its shadows. */
  readonly shadows?: Lab;
  /** `underpaint and glaze`: pigment of the glaze; chosen automatically if omitted. */
  readonly glaze?: string;
  /**
   * Keep the lights in the cloth's hue; otherwise they may lean towards a brighter neighbouring
   * hue.
   */
  readonly upright?: boolean;
  /** The colour beside the cloth, which adds reflected light. */
  readonly neighbour?: Lab;
  /** The painter's declaration: white cloth in a grey light is still white cloth. */
  readonly declared?: Declared;
  /** Allow black in the shadows, whatever the rule says. */
  readonly insistBlack?: boolean;
  /** Use only these pigments. */
  readonly pigments?: readonly string[];
}

/** A garment: a cloth, with its own lining and trim if wanted. */
export interface GarmentRequest extends ClothRequest {
  readonly lining?: ClothRequest;
  readonly trim?: ClothRequest;
}

/** A transparent film over a fold's body colour. */
export interface Glaze {
  readonly pigment: string;
  /** Wet thickness in millimetres. */
  readonly filmMm: number;
}

/** One step of a cloth as painted. */
export interface Fold {
  readonly step: Step | 'reflected light';
  /** Target colour, within the shelf's reach. */
  readonly wish: Lab;
  /** Expected visible colour: of the pile, or of the glaze over it. */
  readonly lab: Lab;
  /** CIEDE2000 from the target to the visible colour. */
  readonly deltaE00: number;
  /** The pile. Under a glaze it is the body colour, and its `lab` is without the glaze. */
  readonly mixture: Mixture;
  readonly glaze: Glaze | null;
  /** Share of the cloth, 0…1; 0 for reflected light, which is outside the order. */
  readonly share: number;
}

/** Loss of chroma if black deepened the step to the same lightness. */
export interface BlackLoss {
  readonly step: Step;
  readonly black: string;
  readonly chroma: number;
  readonly withBlack: number;
}

/** A cloth with its ladder. */
export interface Cloth {
  readonly name: string;
  readonly way: DraperyWay;
  readonly stuff: Fabric;
  /** Six folds, lightest first; lightness strictly falls. */
  readonly folds: readonly Fold[];
  /** Lies between half-tone and shadow, outside the order; null without a neighbour. */
  readonly reflected: Fold | null;
  readonly black: BlackRule;
  /** null if black is allowed or the shelf has none. */
  readonly blackLoss: BlackLoss | null;
  /** Every pigment used. */
  readonly pigments: readonly string[];
  /** The pigment that contributes most to the deepest fold. */
  readonly deepest: string;
  readonly remarks: readonly ClothRemark[];
}

/** A cloth with its lining and trim. */
export interface Garment extends Cloth {
  readonly lining: Cloth | null;
  readonly trim: Cloth | null;
}

/** Why a drapery cannot be computed. */
export type DraperyFault =
  | MixFault
  /** The shelf does not have six lightnesses for this cloth. */
  | { readonly code: 'no-range'; readonly name: string }
  /** The shelf has no transparent pigment of this hue, or not the one named. */
  | { readonly code: 'no-glaze'; readonly name: string; readonly pigment: string | null }
  /** `as nature had it` without six colours, or `shot cloth` without its shadow colour. */
  | { readonly code: 'wants-more'; readonly name: string; readonly what: 'ladder' | 'shadows' };

/**
 * Carries a drapery fault out of nested calls; {@link drape} in garment.ts turns it into a value.
 */
export class DraperyFaultError extends Error {
  readonly fault: DraperyFault;
  constructor(fault: DraperyFault) {
    super(fault.code);
    this.fault = fault;
  }
}
