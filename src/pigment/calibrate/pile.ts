import { deltaE00 } from '../../colour/difference.ts';
import type { Lab } from '../../colour/lab.ts';
import type { Expected } from './expected.ts';
import { median } from './sample.ts';
import type { Painted } from './swatches.ts';

/** "It came out like this": a pile as it was foreseen when it was mixed, and as it was. */
export interface LoggedPile extends Painted {
  readonly logged: true;
  /** ISO day. */
  readonly date: string;
  /** What the shelf foresaw on that day. */
  readonly foreseen: Lab;
  /** The lots of its pigments, for a new lot is another paint. */
  readonly lots: readonly { readonly pigment: string; readonly lot: string }[];
}

/** How well piles were foreseen, over time. */
export interface Accuracy {
  /** Every pile in the order of its days. */
  readonly piles: readonly {
    readonly id: string;
    readonly date: string;
    readonly deltaE00: number;
  }[];
  /** Of the last ones; null before there are three. */
  readonly lately: Expected | null;
  /** Of the first ones, where there are enough of both. */
  readonly atFirst: Expected | null;
}

const RECENT = 10;

/** Predicted against seen, by day. What was foreseen then counts, never what is known since. */
export function accuracyOf(piles: readonly LoggedPile[]): Accuracy {
  const known = piles
    .toSorted((p, q) => p.date.localeCompare(q.date))
    .map(({ id, date, foreseen, lab }) => ({ id, date, deltaE00: deltaE00(foreseen, lab) }));
  const off = known.map((each) => each.deltaE00);
  return {
    piles: known,
    lately: off.length < 3 ? null : summary(off.slice(-RECENT)),
    atFirst: off.length < RECENT + 3 ? null : summary(off.slice(0, RECENT)),
  };
}

function summary(off: readonly number[]): Expected {
  const sorted = off.toSorted((p, q) => p - q);
  return { median: median(sorted), tenth: sorted[Math.floor(0.9 * (sorted.length - 1) + 0.5)]! };
}

/** The accuracy in a sentence; empty before there is anything to say. */
export function accuracyWords({ piles, lately, atFirst }: Accuracy): string {
  if (lately === null)
    return piles.length === 0
      ? ''
      : `${piles.length === 1 ? 'One pile was' : 'Two piles were'} logged; from three on Kingcup says how well it foresees.`;
  const now = `Of the last ${Math.min(RECENT, piles.length)} piles half came out within ${lately.median.toFixed(1)} of what was foreseen.`;
  return atFirst === null ? now : `${now} At first it was ${atFirst.median.toFixed(1)}.`;
}

/** The piles that were mixed from the lots that are still in use: others tell of other paints. */
export function pilesOfLots(
  piles: readonly LoggedPile[],
  lotOf: (pigment: string) => string | null,
): LoggedPile[] {
  return piles.filter(({ lots }) => lots.every(({ pigment, lot }) => lotOf(pigment) === lot));
}
