import type { Stock } from '../pigment/stock.ts';
import type { Acknowledged, Rules } from './asked.ts';
import { hazardOf, isToxic } from './known.ts';
import type { PigmentPlan } from './plan.ts';

/** A toxic lot, whose data sheet each person reads before it is opened. */
export interface LotToRead {
  readonly pigment: string;
  readonly lot: string;
  /** "Lead white, lot 3". */
  readonly words: string;
}

/** The toxic lots among what is drawn for a palette, each once. */
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

/** When a person has read of a lot; nothing where they have not. */
export const readingOf = (
  { acknowledged }: Pick<Rules, 'acknowledged'>,
  { pigment, lot }: LotToRead,
  person: string,
): Acknowledged | undefined =>
  acknowledged.find((one) => one.pigment === pigment && one.lot === lot && one.person === person);
