import type { Oil } from '../pigment/paste.ts';
import type { Leftover } from './leftovers.ts';
import type { Passage } from './passage.ts';
import { ALLOWANCES, type Allowances } from './pile-quantity.ts';

/** Who has read the data sheet of which lot, and when. */
export interface Acknowledged {
  readonly pigment: string;
  readonly lot: string;
  readonly person: string;
  readonly date: string;
}

/** Settings of a studio. */
export interface Rules {
  /** Seat order by pigment; if empty, light to dark is proposed. */
  readonly seats: readonly string[];
  readonly shape: 'oval' | 'square';
  /** The hand that holds the palette. */
  readonly hand: 'left' | 'right';
  readonly allowances: Allowances;
  /** cm3 of each pigment laid out pure beside its mixtures, for corrections; 0 for none. */
  readonly edgeCm3: number;
  readonly oil: Oil;
  /** Minors or pregnant people are present: no toxic pigment on any sheet. */
  readonly pupils: boolean;
  /** Who works here today; each person acknowledges each toxic lot. */
  readonly people: readonly string[];
  readonly acknowledged: readonly Acknowledged[];
}
/** Default settings. */
export const DEFAULT_RULES: Rules = {
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

/** A day's request: one to three palettes, each for one or more passages. */
export interface DayRequest {
  /** ISO date. */
  readonly date: string;
  readonly palettes: readonly PaletteRequest[];
  readonly rules: Rules;
  readonly leftovers: readonly Leftover[];
}
/** One palette of a request. */
export interface PaletteRequest {
  readonly name: string;
  readonly passages: readonly Passage[];
  /** Ids of mixed piles in a manual order; default: light to dark. */
  readonly order?: readonly string[];
  /** Seats set by hand for this palette only; default: the studio's. */
  readonly seats?: readonly string[];
}
