import type { Oil } from '../pigment/paste.ts';
import type { Leftover } from './leftover.ts';
import type { Passage } from './passage.ts';
import { ALLOWANCES, type Allowances } from './quantity.ts';

/** Who has read the data sheet of which lot, and when. */
export interface Acknowledged {
  readonly pigment: string;
  readonly lot: string;
  readonly person: string;
  readonly date: string;
}

/** What a studio has settled once. */
export interface Rules {
  /** Seat order by pigment; empty: light to dark is proposed. */
  readonly seats: readonly string[];
  readonly shape: 'oval' | 'square';
  /** The hand that holds the palette. */
  readonly hand: 'left' | 'right';
  readonly allowances: Allowances;
  /** cm3 of each pigment laid out pure beside its mixtures, for corrections; 0 for none. */
  readonly edgeCm3: number;
  readonly oil: Oil;
  /** Pupils under age or pregnant people are here: nothing toxic comes on any sheet. */
  readonly pupils: boolean;
  /** Who works here today; each acknowledges each toxic lot. */
  readonly people: readonly string[];
  readonly acknowledged: readonly Acknowledged[];
}
export const RULES: Rules = {
  seats: [],
  shape: 'oval',
  hand: 'left',
  allowances: ALLOWANCES,
  edgeCm3: 0.5,
  oil: 'linseed',
  pupils: false,
  people: [],
  acknowledged: [],
};

/** One to three palettes, each for one passage or more. */
export interface DayAsked {
  /** ISO day. */
  readonly date: string;
  readonly palettes: readonly PaletteAsked[];
  readonly rules: Rules;
  readonly leftovers: readonly Leftover[];
}
export interface PaletteAsked {
  readonly name: string;
  readonly passages: readonly Passage[];
  /** Ids of mixed piles in an order set by hand; the studio's own order where absent. */
  readonly order?: readonly string[];
  /** Seats set by hand for this palette alone; the studio's where absent. */
  readonly seats?: readonly string[];
}
