import { pigmentOf } from '../pigment/facts.ts';
import type { Stock } from '../pigment/stock.ts';
import type { PigmentPlan } from './day.ts';
import { listed, within } from './figure.ts';
import { factsOf, hazardOf } from './known.ts';
import { baseOf } from './passage.ts';
import { isCollected } from './tools.ts';

/** One caution, and every pigment of a palette that it is about. */
export interface CautionGroup {
  readonly pigments: readonly string[];
  readonly names: string;
  readonly toxic: boolean;
  readonly words: string;
}

/** Whether a pigment needs a caution: by its class, as powder, or because its scraps are collected. */
export function needsCaution(stock: Stock | null, { key, supply }: PigmentPlan): boolean {
  if (hazardOf(stock, key) !== 'low' || isCollected(key)) return true;
  return supply.draws.some(({ entry }) => entry?.form === 'powder');
}

/** The cautions of exactly these pigments, the gravest first. */
export function cautionsOf(
  pigments: readonly PigmentPlan[],
  stock: Stock | null,
): readonly CautionGroup[] {
  const groups = new Map<string, { keys: string[]; names: string[]; rank: number }>();
  for (const plan of pigments.filter((one) => needsCaution(stock, one))) {
    const level = hazardOf(stock, plan.key);
    const words = wordsOf(plan.key, stock);
    const group = groups.get(words) ?? { keys: [], names: [], rank: RANK[level] };
    group.keys.push(plan.key);
    group.names.push(group.names.length === 0 ? plan.label : within(plan.label));
    groups.set(words, group);
  }
  return [...groups]
    .sort(([, a], [, b]) => b.rank - a.rank)
    .map(([words, { keys, names, rank }]) => ({
      pigments: keys,
      names: listed(names),
      toxic: rank >= RANK.toxic,
      words,
    }));
}

const RANK = { low: 0, caution: 1, toxic: 2, very_toxic: 3 } as const;

function wordsOf(pigment: string, stock: Stock | null): string {
  const own = stock?.own.find(({ id }) => id === baseOf(pigment));
  if (own !== undefined) {
    const said = own.caution === '' ? '' : ` ${own.caution}`;
    return `One of the studio's own: read its data sheet.${said}`;
  }
  const facts = pigmentOf(baseOf(pigment)) ?? factsOf(pigment);
  if (facts === null) return 'What it can do is not on our list: read its data sheet.';
  return `${facts.hazard.sentence} ${facts.hazard.caution}`;
}

/** On every sheet, whatever lies on the palette. */
export const ALWAYS: readonly { readonly head: string; readonly words: string }[] = [
  {
    head: 'Oily rags catch fire by themselves',
    words:
      'Spread each rag flat out of doors until it is hard, or put it wet with water into the lidded metal can. Empty the can every day. Never a heap, a bin or a pocket.',
  },
  {
    head: 'Solvents',
    words:
      'Use none where oil alone will do. Otherwise lidded jars, open windows, no flame, and off the skin. No food, drink or smoke at the bench.',
  },
  {
    head: 'What comes first',
    words:
      'The safety data sheet of the lot in hand, local codes and licensed practice outrank this sheet. It is no medical, legal or fire-safety advice.',
  },
];
