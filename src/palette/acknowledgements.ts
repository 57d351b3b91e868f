import type { Stock } from '../pigment/stock.ts';
import type { PigmentPlan } from './day-plan.ts';
import type { Acknowledged, Rules } from './day-request.ts';
import { hazardOf, isToxic } from './pigment-lookup.ts';

/** A toxic lot; everyone reads its data sheet before it is opened. */
export interface LotToRead {
  readonly pigment: string;
  readonly lot: string;
  /** "Lead white, lot 3". */
  readonly words: string;
}

/** The toxic lots drawn for a palette, without repeats. */
export function lotsToRead(
  pigments: readonly PigmentPlan[],
  stock: Stock | null,
): readonly LotToRead[] {
  return pigments
    .filter(({ key }) => isToxic(hazardOf(stock, key)))
    .flatMap(({ key, label, supply }) =>
      [...new Set(supply.draws.map(({ entry }) => entry?.lot ?? ''))].map((lot) => ({
        pigment: key,
        lot,
        words: lot === '' ? label : `${label}, lot ${lot.replace(/^lot\s*/i, '')}`,
      })),
    );
}

/** The record that a person has read a lot's data sheet; undefined if there is none. */
export const readingOf = (
  { acknowledged }: Pick<Rules, 'acknowledged'>,
  { pigment, lot }: LotToRead,
  person: string,
): Acknowledged | undefined =>
  acknowledged.find((one) => one.pigment === pigment && one.lot === lot && one.person === person);
