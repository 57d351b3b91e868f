import type { Lab } from '../colour/lab.ts';
import type { Rules } from './asked.ts';
import type { Clash } from './clash.ts';
import type { Dryness } from './drying.ts';
import type { LayerWarning } from './layer.ts';
import type { Offer } from './leftover.ts';
import type { Passage, PassagePile } from './passage.ts';
import type { PileAmount } from './quantity.ts';
import type { Supply, Taking } from './supply.ts';
import type { Swap } from './swap.ts';
import type { Tools } from './tools.ts';

/** A pile that is prepared today. */
export interface PilePlan {
  readonly key: string;
  readonly passage: Passage;
  /** As it will be mixed. */
  readonly pile: PassagePile & { readonly parts: NonNullable<PassagePile['parts']> };
  readonly lab: Lab;
  readonly amount: PileAmount;
  /** One pigment as it comes: it lies in its seat, not among the mixed piles. */
  readonly pure: boolean;
  /** At least half of it is the studio's white. */
  readonly tint: boolean;
  /** The mixture that stands in for one with toxic pigments. */
  readonly swap: Swap | null;
  readonly clashes: readonly Clash[];
  readonly layerWarnings: readonly LayerWarning[];
}

/** A pigment on one palette. All volumes are of paste. */
export interface PigmentPlan {
  readonly key: string;
  readonly label: string;
  readonly lab: Lab;
  readonly tools: Tools;
  /** cm3 that go into mixed piles, and that lie in the pigment's own seat; they sum to the supply. */
  readonly inMixtures: number;
  readonly inSeat: number;
  readonly supply: Supply;
  /** Along the edge, from 0 beside the thumb hole to 1 at the far end. */
  readonly place: number;
}

export interface PalettePlan {
  /** Which of the palettes that were asked for. */
  readonly asked: number;
  /** Its board `part` of `of`, where that is more than one palette carries. */
  readonly part: number;
  readonly of: number;
  readonly name: string;
  readonly passages: readonly Passage[];
  /** In their seats. */
  readonly pigments: readonly PigmentPlan[];
  /** Every pile, pure ones too, in the order they were asked for. */
  readonly piles: readonly PilePlan[];
  /** In their rows. */
  readonly mixed: readonly PilePlan[];
  /** In the order in which they are prepared: by tools, light to dark within. */
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

/** A pigment of which the shelf holds less than the day asks for. */
export interface Lack {
  readonly pigment: string;
  readonly label: string;
  readonly lackCm3: number;
  readonly dryRefused: boolean;
  readonly piles: readonly {
    readonly pile: string;
    readonly palette: number;
    readonly other: Swap | null;
  }[];
}

export interface Day {
  readonly date: string;
  readonly rules: Rules;
  readonly palettes: readonly PalettePlan[];
  readonly leftOff: readonly LeftOff[];
  readonly lacks: readonly Lack[];
  /** What leaves the stock once this is prepared. */
  readonly takings: readonly Taking[];
  /** Whether a part is a volume of paste; where it is not, there are parts, but no grams. */
  readonly weighable: boolean;
}
