import { computed } from '@preact/signals';
import { measuredRecipeOf } from '../../../mixture/measured-recipe.ts';
import {
  handbookFactsOf,
  type JudgedFacts,
  lampDrift,
  type MixtureProperties,
  mixturePropertiesOf,
} from '../../../mixture/mixture-properties.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import { ofParts } from '../../../mixture/predict.ts';
import { pigmentOfPaint } from '../../../pigment/mixing-shelf.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';
import { shelf, storedShelf } from '../studio.ts';
import { answers, selectedIndex, targets } from './current-harmony.ts';
import { chosenMixtureFor } from './mixing-decisions.ts';

/** Mixture in use for each colour: the painter's choice, or else the simplest; null until known. */
export const mixturesInUse = computed<readonly (Mixture | null)[]>(() =>
  targets.value.map((target, i) => chosenMixtureFor(target) ?? answers.value[i]?.simplest ?? null),
);

/** A mixture with its assessment. */
export interface AssessedMixture {
  readonly mixture: Mixture;
  readonly judgement: MixtureProperties;
  /** CIEDE2000 by which lamp-light shifts it relative to the harmony's other colours. */
  readonly drift: number;
  /** Whether no other colour has a mixture yet; `drift` is then 0. */
  readonly hasNoNeighbours: boolean;
}

/** Facts of a pigment: from the handbooks, or for a custom pigment from the studio's stock. */
function pigmentFactsFor(pigment: string): JudgedFacts | null {
  const own = storedShelf.value?.body.stock?.own.find(({ id }) => id === pigmentOfPaint(pigment));
  if (!own) return handbookFactsOf(pigment);
  const { hazard: level, caution } = own;
  return {
    hazard: {
      level,
      sentence: mixtureTexts.ownHazard,
      caution: caution || mixtureTexts.ownCaution,
    },
    lightfast: null,
  };
}

const propertiesOf = (mixture: Mixture, on: Shelf): MixtureProperties =>
  mixturePropertiesOf(ofParts(measuredRecipeOf(mixture, on).pigments), on, pigmentFactsFor);

/** Assesses mixtures of the selected colour together with the mixtures of the other colours. */
export function assessMixtures(mixtures: readonly Mixture[]): AssessedMixture[] {
  const on = shelf.value;
  const seen = (mixture: Mixture, { lamp }: MixtureProperties) => ({
    lab: measuredRecipeOf(mixture, on).lab,
    lamp,
  });
  const others = mixturesInUse.value.flatMap((mixture, i) =>
    mixture && i !== selectedIndex.value ? [seen(mixture, propertiesOf(mixture, on))] : [],
  );
  return mixtures.map((mixture) => {
    const judgement = propertiesOf(mixture, on);
    const drift = lampDrift([seen(mixture, judgement), ...others])[0]!;
    return { mixture, judgement, drift, hasNoNeighbours: others.length === 0 };
  });
}

/** Pigments of a mixture in whole parts, with let-downs resolved, largest share first. */
const pigmentsInRecipe = (mixture: Mixture): readonly string[] =>
  measuredRecipeOf(mixture, shelf.value).pigments.map(({ pigment }) => pigment);

/** Key of a mixture's set of pigments. */
export const pigmentSetKey = (mixture: Mixture): string =>
  [...pigmentsInRecipe(mixture)].sort().join();
