import type { Lab } from '../colour/lab.ts';
import type { Rules } from './day-request.ts';
import type { Dryness } from './drying-time.ts';
import type { LayerWarning } from './layer-rules.ts';
import type { Offer } from './leftovers.ts';
import type { Passage, PassagePile } from './passage.ts';
import type { Clash } from './pigment-clashes.ts';
import type { PileAmount } from './pile-quantity.ts';
import type { Replacement } from './replacement.ts';
import type { StockWithdrawal, Supply } from './stock-supply.ts';
import type { Tools } from './tool-groups.ts';

/** A pile to prepare today. */
export interface PilePlan {
  readonly key: string;
  readonly passage: Passage;
  /** As it will be mixed. */
  readonly pile: PassagePile & { readonly parts: NonNullable<PassagePile['parts']> };
  readonly lab: Lab;
  readonly amount: PileAmount;
  /** One unmixed pigment: it lies in its seat, not among the mixed piles. */
  readonly pure: boolean;
  /** At least half of it is the studio's white. */
  readonly tint: boolean;
  /** The mixture that replaces one with toxic pigments. */
  readonly swap: Replacement | null;
  readonly clashes: readonly Clash[];
  readonly layerWarnings: readonly LayerWarning[];
}

/** A pigment on one palette. All volumes are of paste. */
export interface PigmentPlan {
  readonly key: string;
  readonly label: string;
  readonly lab: Lab;
  readonly tools: Tools;
  /** cm3 for mixed piles and for the pigment's own seat; they sum to the supply. */
  readonly inMixtures: number;
  readonly inSeat: number;
  readonly supply: Supply;
  /** Position along the edge: 0 beside the thumb hole, 1 at the far end. */
  readonly place: number;
}

/** One palette as planned. */
export interface PalettePlan {
  /** Index of the requested palette. */
  readonly asked: number;
  /** Board `part` of `of`, if the request is divided over several. */
  readonly part: number;
  readonly of: number;
  readonly name: string;
  readonly passages: readonly Passage[];
  /** In seat order. */
  readonly pigments: readonly PigmentPlan[];
  /** Every pile, unmixed ones too, in the order of the request. */
  readonly piles: readonly PilePlan[];
  /** In row order. */
  readonly mixed: readonly PilePlan[];
  /** In order of preparation: by tools, then light to dark. */
  readonly preparing: readonly PigmentPlan[];
  readonly slabClashes: readonly Clash[];
  readonly offers: readonly Offer[];
}

/** A pile that is left off today, and why. */
export interface LeftOff {
  readonly pile: string;
  readonly passage: string;
  readonly why:
    | { readonly code: 'mixture-gone' }
    | { readonly code: 'toxic-alone' }
    | { readonly code: 'ground-wet'; readonly dryness: Dryness };
}

/** A pigment of which the stock holds less than the day needs. */
export interface Shortage {
  readonly pigment: string;
  readonly label: string;
  readonly lackCm3: number;
  readonly dryRefused: boolean;
  readonly piles: readonly {
    readonly pile: string;
    readonly palette: number;
    readonly other: Replacement | null;
  }[];
}

/** A planned day. */
export interface Day {
  readonly date: string;
  readonly rules: Rules;
  readonly palettes: readonly PalettePlan[];
  readonly leftOff: readonly LeftOff[];
  readonly lacks: readonly Shortage[];
  /** Amounts that leave the stock once this is prepared. */
  readonly takings: readonly StockWithdrawal[];
  /** Whether a part is a volume of paste; otherwise parts are given without grams. */
  readonly weighable: boolean;
}
