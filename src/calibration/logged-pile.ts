import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { ErrorQuantiles } from '../pigment/stock.ts';
import type { PaintedSwatch } from './painted-swatch.ts';
import { median } from './robust-mean.ts';

/** A mixed pile with its predicted and its observed colour. */
export interface LoggedPile extends PaintedSwatch {
  readonly logged: true;
  /** ISO date. */
  readonly date: string;
  /** Colour predicted on that date. */
  readonly foreseen: Lab;
  /** The lots of its pigments: a new lot is another paint. */
  readonly lots: readonly { readonly pigment: string; readonly lot: string }[];
}

/** Accuracy of predictions over time. */
export interface Accuracy {
  /** Every pile, by date. */
  readonly piles: readonly {
    readonly id: string;
    readonly date: string;
    readonly deltaE00: number;
  }[];
  /** Of the last {@link RECENT_PILES}; null below three piles. */
  readonly lately: ErrorQuantiles | null;
  /** Of the first {@link RECENT_PILES}; null below {@link RECENT_PILES} + 3 piles. */
  readonly atFirst: ErrorQuantiles | null;
}

export const RECENT_PILES = 10;

/** Accuracy of logged piles. It compares the prediction made at the time, never a later one. */
export function accuracyOf(piles: readonly LoggedPile[]): Accuracy {
  const known = piles
    .toSorted((p, q) => p.date.localeCompare(q.date))
    .map(({ id, date, foreseen, lab }) => ({ id, date, deltaE00: deltaE00(foreseen, lab) }));
  const off = known.map((each) => each.deltaE00);
  return {
    piles: known,
    lately: off.length < 3 ? null : errorSummary(off.slice(-RECENT_PILES)),
    atFirst: off.length < RECENT_PILES + 3 ? null : errorSummary(off.slice(0, RECENT_PILES)),
  };
}

function errorSummary(off: readonly number[]): ErrorQuantiles {
  const sorted = off.toSorted((p, q) => p - q);
  return { median: median(sorted), tenth: sorted[Math.floor(0.9 * (sorted.length - 1) + 0.5)]! };
}

/** The piles mixed only from current lots. @param lotOf current lot of a pigment */
export function pilesOfCurrentLots(
  piles: readonly LoggedPile[],
  lotOf: (pigment: string) => string | null,
): LoggedPile[] {
  return piles.filter(({ lots }) => lots.every(({ pigment, lot }) => lotOf(pigment) === lot));
}
