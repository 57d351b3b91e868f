import type { PigmentPlan } from '../palette/day-plan.ts';
import { baseOf } from '../palette/passage.ts';
import { factsOf, hazardOf } from '../palette/pigment-lookup.ts';
import { isCollected } from '../palette/tool-groups.ts';
import type { Stock } from '../pigment/stock.ts';
import { joinWords, midSentence } from '../wording.ts';

/** One caution, with every pigment of a palette that it applies to. */
export interface CautionGroup {
  readonly pigments: readonly string[];
  /** Hazards; pigments with the same one share an entry. */
  readonly hazards: readonly { readonly names: string; readonly words: string }[];
  readonly toxic: boolean;
  /** What to do about it. */
  readonly words: string;
}

/**
 * Whether a pigment needs a caution: by hazard class, as powder, or because its scraps are
 * collected.
 */
function needsCaution(stock: Stock | null, { key, supply }: PigmentPlan): boolean {
  if (hazardOf(stock, key) !== 'low' || isCollected(key)) return true;
  return supply.draws.some(({ entry }) => entry?.form === 'powder');
}

/** Cautions for these pigments, most severe first. */
export function cautionsOf(
  pigments: readonly PigmentPlan[],
  stock: Stock | null,
): readonly CautionGroup[] {
  const groups = new Map<string, { rank: number; hazards: Map<string, PigmentPlan[]> }>();
  for (const plan of pigments.filter((one) => needsCaution(stock, one))) {
    const { hazard, caution } = wordsOf(plan.key, stock);
    const rank = RANK[hazardOf(stock, plan.key)];
    const group = groups.get(caution) ?? { rank, hazards: new Map<string, PigmentPlan[]>() };
    group.rank = Math.max(group.rank, rank);
    group.hazards.set(hazard, [...(group.hazards.get(hazard) ?? []), plan]);
    groups.set(caution, group);
  }
  return [...groups]
    .sort(([, a], [, b]) => b.rank - a.rank)
    .map(([words, { rank, hazards }]) => ({
      pigments: [...hazards.values()].flat().map(({ key }) => key),
      hazards: [...hazards].map(([hazard, plans]) => ({
        names: joinWords(plans.map(({ label }, i) => (i === 0 ? label : midSentence(label)))),
        words: hazard,
      })),
      toxic: rank >= RANK.toxic,
      words,
    }));
}

const RANK = { low: 0, caution: 1, toxic: 2, very_toxic: 3 } as const;

function wordsOf(pigment: string, stock: Stock | null): { hazard: string; caution: string } {
  const own = stock?.own.find(({ id }) => id === baseOf(pigment));
  if (own !== undefined)
    return {
      hazard: "One of the studio's own: read its data sheet.",
      caution: own.caution === '' ? UNTOLD : own.caution,
    };
  const facts = factsOf(pigment);
  return facts === null
    ? { hazard: 'What it can do is not on our list: read its data sheet.', caution: UNTOLD }
    : { hazard: facts.hazard.sentence, caution: facts.hazard.caution };
}
/** For pigments whose hazards are unknown. */
const UNTOLD = 'Until you know, treat it with care: no dust, gloves, and collect the scraps.';

/** A caution as running text. */
export const cautionWords = ({ hazards, words, toxic }: CautionGroup): string =>
  `${toxic ? 'Toxic. ' : ''}${hazards.map((one) => `${one.names}: ${one.words}`).join(' ')} ${words}`;

/** Printed on every sheet, whatever is on the palette. */
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
