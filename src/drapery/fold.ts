import type { Lab } from '../colour/lab.ts';
import type { Declared } from '../harmony/family.ts';
import type { Step } from '../harmony/harmony.ts';
import type { Mixture } from '../mixture/mixture.ts';
import type { MixFault } from '../mixture/work.ts';
import type { BlackRule } from './black.ts';
import type { Stuff } from './stuff.ts';

/** How a cloth is modelled; the painter chooses. */
export const DRAPERY_WAYS = [
  'as nature had it',
  'deepened in its own hue',
  'shot cloth',
  'underpaint and glaze',
] as const;
export type DraperyWay = (typeof DRAPERY_WAYS)[number];

/** A cloth as the painter wants it. Colours are CIELAB under D65. */
export interface ClothWish {
  readonly name: string;
  /** The local colour; of shot cloth, that of its lights. */
  readonly lab: Lab;
  readonly way: DraperyWay;
  readonly stuff: Stuff;
  /** Steps evenly spaced, instead of as the stuff masses. */
  readonly even?: boolean;
  /** `as nature had it`: the six steps of the photograph, lightest first. */
  readonly ladder?: readonly Lab[];
  /** `shot cloth`: the colour of its shadows. */
  readonly shadows?: Lab;
  /** `underpaint and glaze`: the pigment of the glaze; left out, one is chosen. */
  readonly glaze?: string;
  /** Lights stay in the cloth's hue, where otherwise they may lean to the brighter neighbour. */
  readonly upright?: boolean;
  /** The colour beside the cloth: with it comes reflected light. */
  readonly neighbour?: Lab;
  /** White cloth in a grey light is white cloth all the same. */
  readonly declared?: Declared;
  /** Black may deepen the shadows, whatever the rule says. */
  readonly insistBlack?: boolean;
  /** Only these pigments. */
  readonly pigments?: readonly string[];
}

/** A garment: its cloth, with a lining and a trim of their own where wanted. */
export interface GarmentWish extends ClothWish {
  readonly lining?: ClothWish;
  readonly trim?: ClothWish;
}

/** A transparent film over a fold's body colour. */
export interface Glaze {
  readonly pigment: string;
  /** Thickness as laid, millimetres. */
  readonly filmMm: number;
}

/** One step of a cloth as it is painted. */
export interface Fold {
  readonly step: Step | 'reflected light';
  /** What was aimed at, within the shelf's reach. */
  readonly wish: Lab;
  /** What is expected to be seen: of the pile, or of the glaze over it. */
  readonly lab: Lab;
  /** CIEDE2000 from the wish to what is seen. */
  readonly deltaE00: number;
  /** The pile; under a glaze, the body colour beneath it, whose `lab` is its own colour before the glaze. */
  readonly mixture: Mixture;
  readonly glaze: Glaze | null;
  /** Share of the cloth, 0…1; 0 for reflected light, which stands outside the order. */
  readonly share: number;
}

/** What deepening with black instead would cost: chroma at the same lightness. */
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
  readonly stuff: Stuff;
  /** Six, lightest first, lightness strictly falling. */
  readonly folds: readonly Fold[];
  /** Between half-tone and shadow, outside the order; null without a neighbour. */
  readonly reflected: Fold | null;
  readonly black: BlackRule;
  /** null where black is allowed anyway, or the shelf has none. */
  readonly blackLoss: BlackLoss | null;
  /** Every pigment in it. */
  readonly pigments: readonly string[];
  /** The shelf's pigment that gives its deepest fold most of its colour. */
  readonly deepest: string;
  /** Plain sentences: what was held back, what the shelf could not do. */
  readonly remarks: readonly string[];
}

export interface Garment extends Cloth {
  readonly lining: Cloth | null;
  readonly trim: Cloth | null;
}

export type DraperyFault =
  | MixFault
  /** The shelf has not six lightnesses for this cloth. */
  | { readonly code: 'no-range'; readonly name: string }
  /** No transparent pigment of this hue is on the shelf, or the one named is not. */
  | { readonly code: 'no-glaze'; readonly name: string; readonly pigment: string | null }
  /** `as nature had it` without six colours, `shot cloth` without the colour of its shadows. */
  | { readonly code: 'wants-more'; readonly name: string; readonly what: 'ladder' | 'shadows' };

/** Carries a fault of drapery up to where it becomes a value. */
export class Snag extends Error {
  readonly fault: DraperyFault;
  constructor(fault: DraperyFault) {
    super(fault.code);
    this.fault = fault;
  }
}
