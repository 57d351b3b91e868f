import type { Lab } from '../colour/lab.ts';
import type { LetDown } from '../mixture/mixture-types.ts';
import { type PilePart, volumesOf } from '../mixture/pile-parts.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Stock } from '../pigment/stock.ts';
import { nameIn } from '../pigment/stock-label.ts';
import type { FilmWord } from './film-kinds.ts';

/** What a pile covers: an area, or a share 0…1 of the passage's canvas. */
export type Cover = { readonly cm2: number } | { readonly share: number };

/** One pile that a passage needs. */
export interface PassagePile {
  readonly id: string;
  readonly name: string;
  /** null if its mixture is no longer in the book. */
  readonly parts: readonly PilePart[] | null;
  readonly letDowns?: readonly LetDown[];
  /** The planned colour; default: the shelf's prediction. */
  readonly lab?: Lab;
  readonly cover: Cover;
  readonly film: FilmWord;
  /** Wet thickness, micrometres; default: the film's usual one. */
  readonly filmUm?: number;
  /** Default: 1. */
  readonly coats?: number;
  /** cm3 of oil per cm3 of paste, beyond the paste's own; default: the film's. */
  readonly spareOil?: number;
  /** Override the studio's allowances (pile-quantity.ts): `tooth` and `waste` as shares. */
  readonly tooth?: number;
  readonly waste?: number;
  readonly heapCm3?: number;
}

/** A coat that a passage already has. */
export interface Layer {
  /** ISO date on which it was painted. */
  readonly date: string;
  readonly film: FilmWord;
  readonly filmUm?: number;
  readonly parts: readonly PilePart[];
  readonly spareOil?: number;
  /** The painter's touch test and its date, which overrides any estimate. */
  readonly felt?: { readonly date: string; readonly state: DryState };
}
export type DryState = 'wet' | 'tacky' | 'touch-dry';

/** A part of the painting: what it needs today, and the coats under it, oldest first. */
export interface Passage {
  readonly id: string;
  readonly name: string;
  readonly canvas?: { readonly widthCm: number; readonly heightCm: number };
  readonly piles: readonly PassagePile[];
  readonly layers: readonly Layer[];
}

/** The shelf to mix from, and its stock; `stock` is null if nobody counts it. */
export interface Studio {
  readonly shelf: Shelf;
  readonly stock: Stock | null;
}

/** The pigment as the handbooks know it: a paint of one lot is called `pigment#entry`. */
export const baseOf = (pigment: string): string => pigment.split('#')[0]!;

/** The label of a pigment. */
export function labelIn({ shelf, stock }: Studio, pigment: string): string {
  const paint = shelf.paints.find((one) => one.pigment === pigment);
  if (paint !== undefined) return paint.label;
  const base = baseOf(pigment);
  const known = shelf.paints.find((one) => one.pigment === base);
  return known?.label ?? nameIn(stock ?? NO_STOCK, base);
}
const NO_STOCK: Stock = {
  name: '',
  surface: { k1: 0, k2: 0, specular: 'included' },
  white: null,
  entries: [],
  own: [],
};

/** Share 0…1 of each pigment in a mixture, let-downs resolved, largest first. */
export function sharesOf(
  parts: readonly PilePart[],
  letDowns: readonly LetDown[] = [],
): readonly { readonly pigment: string; readonly share: number }[] {
  const volumes = volumesOf(parts, letDowns);
  const total = volumes.reduce((sum, one) => sum + one.parts, 0);
  return volumes.map(({ pigment, parts: volume }) => ({ pigment, share: volume / total }));
}
