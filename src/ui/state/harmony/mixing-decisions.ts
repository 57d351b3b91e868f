import { batch, computed, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import { applyConstraints } from '../../../mixture/constraints.ts';
import {
  DEFAULT_PREFERENCES,
  type MixingPreferences,
  mixOptionsOf,
} from '../../../mixture/mixing-preferences.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import { shelfLabelOf } from '../shelf-labels.ts';
import { shelf, storedShelf } from '../studio.ts';
import { undoHistory } from '../undo-history.ts';
import { isValidOnShelf } from './still-valid.ts';

/** Key of a target colour: its CIELAB coordinates with 4 decimals. */
export const labKey = (lab: Lab): string => lab.map((v) => v.toFixed(4)).join(' ');

/** Preferences for all mixtures: those stored with the harmony, or else the session's latest. */
export const mixingPreferences = signal<MixingPreferences>(DEFAULT_PREFERENCES);
/** Latest preferences of this session. */
let sessionPreferences: MixingPreferences = DEFAULT_PREFERENCES;
/** Manually chosen mixtures by target. */
const chosenMixtures = signal<ReadonlyMap<string, Mixture>>(new Map());
/** Whether the painter influenced the open harmony's mixtures; if so, they are saved with it. */
export const hasOwnDecisions = signal(false);

/** State before a decision, with the decision in words for the undo button. */
interface DecisionSnapshot {
  readonly words: string;
  readonly wish: MixingPreferences;
  readonly sitting: MixingPreferences;
  readonly chosen: ReadonlyMap<string, Mixture>;
}
const decisionHistory = undoHistory<DecisionSnapshot>();
/** The decision that the next undo reverts, in words; null if there is none. */
export const undoableDecision = computed(() => decisionHistory.latest.value?.words ?? null);

/** Runs a decision as one undo step. */
function recordDecision(words: string, act: () => void): void {
  batch(() => {
    decisionHistory.push({
      words,
      wish: mixingPreferences.value,
      sitting: sessionPreferences,
      chosen: chosenMixtures.value,
    });
    hasOwnDecisions.value = true;
    act();
  });
}

/**
 * Changes preferences and discards manually chosen mixtures; undo restores both.
 * @param words the change in words, for the undo button
 */
export function changePreferences(change: Partial<MixingPreferences>, words: string): void {
  const next = { ...mixingPreferences.value, ...change };
  if (canonical(next) === canonical(mixingPreferences.value)) return;
  recordDecision(words, () => {
    mixingPreferences.value = next;
    sessionPreferences = next;
    chosenMixtures.value = new Map();
  });
}

/**
 * Chooses the mixture of a target (CIELAB, D65).
 * @param mixture null for the simplest
 * @param words the choice in words, for the undo button
 */
export function chooseMixture(target: Lab, mixture: Mixture | null, words: string): void {
  recordDecision(words, () => {
    const next = new Map(chosenMixtures.value);
    if (mixture) next.set(labKey(target), mixture);
    else next.delete(labKey(target));
    chosenMixtures.value = next;
  });
}

/** Chooses mixtures as part of a change that has its own undo step. */
export function addChosenMixtures(all: readonly (readonly [Lab, Mixture])[]): void {
  batch(() => {
    hasOwnDecisions.value = true;
    chosenMixtures.value = new Map([
      ...chosenMixtures.value,
      ...all.map(([lab, mixture]) => [labKey(lab), mixture] as const),
    ]);
  });
}

/** Reverts the latest preference or choice. */
export function undoDecision(): void {
  batch(() => {
    const last = decisionHistory.pop();
    if (!last) return;
    mixingPreferences.value = last.wish;
    sessionPreferences = last.sitting;
    chosenMixtures.value = last.chosen;
  });
}

/**
 * The manually chosen mixture of a target; null if there is none, or if its colour on the current
 * shelf differs.
 */
export function chosenMixtureFor(lab: Lab): Mixture | null {
  const mixture = chosenMixtures.value.get(labKey(lab));
  return mixture && isValidOnShelf(shelf.value, mixture) ? mixture : null;
}

/**
 * Resets the state for another harmony.
 * @param all manually chosen mixtures of its record, with their targets
 * @param own its stored preferences; null for the session's latest
 */
export function resetDecisions(
  all: readonly (readonly [Lab, Mixture])[] = [],
  own: MixingPreferences | null = null,
): void {
  mixingPreferences.value = own ?? sessionPreferences;
  chosenMixtures.value = new Map(all.map(([lab, mixture]) => [labKey(lab), mixture]));
  decisionHistory.clear();
  hasOwnDecisions.value = false;
}

/** Cache key of preferences. */
export const preferencesKeyOf = (asked: MixingPreferences): string => canonical({ ...asked });
/** Cache key of the current preferences. */
export const preferencesKey = computed(() => preferencesKeyOf(mixingPreferences.value));
/** Preferences to store; null for the default. */
export const preferencesToStore = computed(() =>
  preferencesKey.value === DEFAULT_PREFERENCES_KEY ? null : mixingPreferences.value,
);
const DEFAULT_PREFERENCES_KEY = preferencesKeyOf(DEFAULT_PREFERENCES);

/**
 * Custom pigments excluded by the hazard preference. The pigment facts do not cover them; their
 * hazard level is in the studio's stock.
 */
const excludedCustomPigments = computed(() => {
  const { hazard } = mixingPreferences.value;
  if (hazard === null) return [];
  const levels = ['low', 'caution', 'toxic', 'very_toxic'];
  const own = (storedShelf.value?.body.stock?.own ?? []).filter(
    (one) => levels.indexOf(one.hazard) >= levels.indexOf(hazard),
  );
  return shelf.value.paints
    .map(({ pigment }) => pigment)
    .filter((pigment) => own.some(({ id }) => pigment === id || pigment.startsWith(`${id}#`)));
});

/** Options of the mixture search under the current shelf and preferences. */
export const mixOptions = computed(() =>
  mixOptionsOf(shelf.value, mixingPreferences.value, excludedCustomPigments.value),
);
/** Options for the choice of a limited palette, which always starts from the whole shelf. */
export const paletteOptions = computed(() =>
  mixOptionsOf(
    shelf.value,
    { ...mixingPreferences.value, only: null },
    excludedCustomPigments.value,
  ),
);

/** Sentence about preferences that contradict each other; null if they do not. */
export const contradiction = computed(() => {
  const { constraints, most } = mixOptions.value;
  const choice = applyConstraints(shelf.value, constraints ?? {}, most ?? DEFAULT_PREFERENCES.most);
  return choice.ok
    ? null
    : mixFaultWords(choice.fault, (pigment) => shelfLabelOf(pigment, shelf.value));
});
