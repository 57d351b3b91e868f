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

/** Mixture in use for each colour: the painter's choice, or else the simplest; null until known. */
export const used = computed<readonly (Mixture | null)[]>(() =>
  targets.value.map((target, i) => chosenFor(target) ?? answers.value[i]?.simplest ?? null),
);

/** A mixture with its assessment. */
export interface Weighed {
  readonly mixture: Mixture;
  readonly judgement: Judgement;
  /** CIEDE2000 by which lamp-light shifts it relative to the harmony's other colours. */
  readonly drift: number;
  /** Whether no other colour has a mixture yet; `drift` is then 0. */
  readonly alone: boolean;
}

/** Facts of a pigment: from the handbooks, or for a custom pigment from the studio's stock. */
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

/** Assesses mixtures of the selected colour together with the mixtures of the other colours. */
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

/** Pigments of a mixture in whole parts, with let-downs resolved, largest share first. */
export const namesIn = (mixture: Mixture): readonly string[] =>
  benchOf(mixture, shelf.value).pigments.map(({ pigment }) => pigment);

/** Key of a mixture's set of pigments. */
export const pigmentsOf = (mixture: Mixture): string => [...namesIn(mixture)].sort().join();
