import type { Lab } from '../colour/lab.ts';
import { type LaidPart, volumesOf } from '../mixture/laid.ts';
import type { LetDown } from '../mixture/mixture.ts';
import { nameIn } from '../pigment/label.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Stock } from '../pigment/stock.ts';
import type { FilmWord } from './film.ts';

/** What a pile has to cover: an area, or a share 0…1 of the passage's canvas. */
export type Cover = { readonly cm2: number } | { readonly share: number };

/** One pile that a passage needs. */
export interface PassagePile {
  readonly id: string;
  readonly name: string;
  /** null where the mixture it came from is no longer in the book. */
  readonly parts: readonly LaidPart[] | null;
  readonly letDowns?: readonly LetDown[];
  /** The colour it was planned as; where it is absent the shelf's prediction serves. */
  readonly lab?: Lab;
  readonly cover: Cover;
  readonly film: FilmWord;
  /** Wet, micrometres; the film's usual one where absent. */
  readonly filmUm?: number;
  /** 1 where absent. */
  readonly coats?: number;
  /** cm3 of oil stirred into 1 cm3 of paste, beyond the paste's own; the film's where absent. */
  readonly spareOil?: number;
  /** 0…1, in place of the studio's. */
  readonly tooth?: number;
  readonly waste?: number;
  readonly heapCm3?: number;
}

/** A coat that a passage has had, the oldest first. */
export interface Layer {
  /** ISO day on which it was laid. */
  readonly date: string;
  readonly film: FilmWord;
  readonly filmUm?: number;
  readonly parts: readonly LaidPart[];
  readonly spareOil?: number;
  /** What the painter's finger found, and when: it outranks any estimate. */
  readonly felt?: { readonly date: string; readonly state: DryState };
}
export type DryState = 'wet' | 'tacky' | 'touch-dry';

/** A part of the painting, what it needs today and what already lies under it. */
export interface Passage {
  readonly id: string;
  readonly name: string;
  readonly canvas?: { readonly widthCm: number; readonly heightCm: number };
  readonly piles: readonly PassagePile[];
  readonly layers: readonly Layer[];
}

/** What can be mixed with, and what stands on the shelf. `stock` null: nobody keeps count of it. */
export interface Studio {
  readonly shelf: Shelf;
  readonly stock: Stock | null;
}

/** A paint of one lot is called `pigment#entry`: the pigment that the handbooks know. */
export const baseOf = (pigment: string): string => pigment.split('#')[0]!;

/** What a person reads for a pigment. */
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

/** Shares 0…1 of each pigment in a mixture, let-downs resolved, largest first. */
export function sharesOf(
  parts: readonly LaidPart[],
  letDowns: readonly LetDown[] = [],
): readonly { readonly pigment: string; readonly share: number }[] {
  const volumes = volumesOf(parts, letDowns);
  const total = volumes.reduce((sum, one) => sum + one.parts, 0);
  return volumes.map(({ pigment, parts: volume }) => ({ pigment, share: volume / total }));
}
