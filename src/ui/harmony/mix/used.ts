import { computed } from '@preact/signals';
import { benchOf } from '../../../mixture/bench.ts';
import {
  handbookOf,
  type Judgement,
  judge,
  type Known,
  lampDrift,
} from '../../../mixture/judge.ts';
import type { Mixture } from '../../../mixture/mixture.ts';
import { ofParts } from '../../../mixture/predict.ts';
import { baseOf } from '../../../pigment/mixable.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { shelf, stocked } from '../../studio.ts';
import { mixSay } from '../../words/mixing.ts';
import { answers, chosen, targets } from '../state.ts';
import { chosenFor } from './decided.ts';

/** What each colour of the harmony is mixed by: the painter's choice, else the simplest; null until it is known. */
export const used = computed<readonly (Mixture | null)[]>(() =>
  targets.value.map((target, i) => chosenFor(target) ?? answers.value[i]?.simplest ?? null),
);

/** A mixture with all that speaks for and against it. */
export interface Weighed {
  readonly mixture: Mixture;
  readonly judgement: Judgement;
  /** CIEDE2000 by which lamp-light parts it from the harmony's other colours. */
  readonly drift: number;
  readonly alone: boolean;
}

/** By the handbooks; of the studio's own pigments by what the studio wrote. */
function knownOf(pigment: string): Known | null {
  const own = stocked.value?.body.stock?.own.find(({ id }) => id === baseOf(pigment));
  if (!own) return handbookOf(pigment);
  const { hazard: level, caution } = own;
  return {
    hazard: { level, sentence: mixSay.ownHazard, caution: caution || mixSay.ownCaution },
    lightfast: null,
  };
}

const judged = (mixture: Mixture, on: Shelf): Judgement =>
  judge(ofParts(benchOf(mixture, on).pigments), on, knownOf);

/** Weighs mixtures for the colour on the bench, beside what its neighbours are mixed by. */
export function weigh(mixtures: readonly Mixture[]): Weighed[] {
  const on = shelf.value;
  const seen = (mixture: Mixture, { lamp }: Judgement) => ({ lab: benchOf(mixture, on).lab, lamp });
  const others = used.value.flatMap((mixture, i) =>
    mixture && i !== chosen.value ? [seen(mixture, judged(mixture, on))] : [],
  );
  return mixtures.map((mixture) => {
    const judgement = judged(mixture, on);
    const drift = lampDrift([seen(mixture, judgement), ...others])[0]!;
    return { mixture, judgement, drift, alone: others.length === 0 };
  });
}

/** The pigments of a mixture as it stands on the bench, most of it first. */
export const namesIn = (mixture: Mixture): readonly string[] =>
  benchOf(mixture, shelf.value).pigments.map(({ pigment }) => pigment);

/** Two with the same pigments are the same way to mix a colour. */
export const pigmentsOf = (mixture: Mixture): string => [...namesIn(mixture)].sort().join();
