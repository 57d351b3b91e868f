import { batch, computed, signal } from '@preact/signals';
import { canonical } from '../../../book/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { choose } from '../../../mixture/constraint.ts';
import { mixFaultWords } from '../../../mixture/faults.ts';
import type { Mixture } from '../../../mixture/mixture.ts';
import { mixOptionsOf, NO_WISH, type Wish } from '../../../mixture/wish.ts';
import { history } from '../../state/history.ts';
import { shelf, stocked } from '../../studio.ts';
import { holdsOn } from './holds.ts';
import { labelOn } from './named.ts';

/** Key of a target colour: its CIELAB coordinates with 4 decimals. */
export const nameOfLab = (lab: Lab): string => lab.map((v) => v.toFixed(4)).join(' ');

/** Preferences for all mixtures: those stored with the harmony, or else the session's latest. */
export const wish = signal<Wish>(NO_WISH);
/** Latest preferences of this session. */
let sitting: Wish = NO_WISH;
/** Manually chosen mixtures by target. */
const chosen = signal<ReadonlyMap<string, Mixture>>(new Map());
/** Whether the painter influenced the open harmony's mixtures; if so, they are saved with it. */
export const hasSay = signal(false);

/** State before a decision, with the decision in words for the undo button. */
interface Past {
  readonly words: string;
  readonly wish: Wish;
  readonly sitting: Wish;
  readonly chosen: ReadonlyMap<string, Mixture>;
}
const past = history<Past>();
/** The decision that the next undo reverts, in words; null if there is none. */
export const lastSaid = computed(() => past.latest.value?.words ?? null);

/** Runs a decision as one undo step. */
function say(words: string, act: () => void): void {
  batch(() => {
    past.push({ words, wish: wish.value, sitting, chosen: chosen.value });
    hasSay.value = true;
    act();
  });
}

/**
 * Changes preferences and discards manually chosen mixtures; undo restores both.
 * @param words the change in words, for the undo button
 */
export function changeWish(change: Partial<Wish>, words: string): void {
  const next = { ...wish.value, ...change };
  if (canonical(next) === canonical(wish.value)) return;
  say(words, () => {
    wish.value = next;
    sitting = next;
    chosen.value = new Map();
  });
}

/**
 * Chooses the mixture of a target (CIELAB, D65).
 * @param mixture null for the simplest
 * @param words the choice in words, for the undo button
 */
export function takeMixture(target: Lab, mixture: Mixture | null, words: string): void {
  say(words, () => {
    const next = new Map(chosen.value);
    if (mixture) next.set(nameOfLab(target), mixture);
    else next.delete(nameOfLab(target));
    chosen.value = next;
  });
}

/** Chooses mixtures as part of a change that has its own undo step. */
export function bringMixtures(all: readonly (readonly [Lab, Mixture])[]): void {
  batch(() => {
    hasSay.value = true;
    chosen.value = new Map([
      ...chosen.value,
      ...all.map(([lab, mixture]) => [nameOfLab(lab), mixture] as const),
    ]);
  });
}

/** Reverts the latest preference or choice. */
export function undoSaid(): void {
  batch(() => {
    const last = past.pop();
    if (!last) return;
    wish.value = last.wish;
    sitting = last.sitting;
    chosen.value = last.chosen;
  });
}

/**
 * The manually chosen mixture of a target; null if there is none, or if its colour on the current
 * shelf differs.
 */
export function chosenFor(lab: Lab): Mixture | null {
  const mixture = chosen.value.get(nameOfLab(lab));
  return mixture && holdsOn(shelf.value, mixture) ? mixture : null;
}

/**
 * Resets the state for another harmony.
 * @param all manually chosen mixtures of its record, with their targets
 * @param own its stored preferences; null for the session's latest
 */
export function openChoices(
  all: readonly (readonly [Lab, Mixture])[] = [],
  own: Wish | null = null,
): void {
  wish.value = own ?? sitting;
  chosen.value = new Map(all.map(([lab, mixture]) => [nameOfLab(lab), mixture]));
  past.clear();
  hasSay.value = false;
}

/** Cache key of preferences. */
export const keyOfWish = (asked: Wish): string => canonical({ ...asked });
/** Cache key of the current preferences. */
export const wishKey = computed(() => keyOfWish(wish.value));
/** Preferences to store; null for the default. */
export const wishToKeep = computed(() => (wishKey.value === NO_WISH_KEY ? null : wish.value));
const NO_WISH_KEY = keyOfWish(NO_WISH);

/**
 * Custom pigments excluded by the hazard preference. The pigment facts do not cover them; their
 * hazard level is in the studio's stock.
 */
const dangerous = computed(() => {
  const { hazard } = wish.value;
  if (hazard === null) return [];
  const levels = ['low', 'caution', 'toxic', 'very_toxic'];
  const own = (stocked.value?.body.stock?.own ?? []).filter(
    (one) => levels.indexOf(one.hazard) >= levels.indexOf(hazard),
  );
  return shelf.value.paints
    .map(({ pigment }) => pigment)
    .filter((pigment) => own.some(({ id }) => pigment === id || pigment.startsWith(`${id}#`)));
});

/** Options of the mixture search under the current shelf and preferences. */
export const mixOptions = computed(() => mixOptionsOf(shelf.value, wish.value, dangerous.value));
/** Options for the choice of a limited palette, which always starts from the whole shelf. */
export const paletteOptions = computed(() =>
  mixOptionsOf(shelf.value, { ...wish.value, only: null }, dangerous.value),
);

/** Sentence about preferences that contradict each other; null if they do not. */
export const contradiction = computed(() => {
  const { constraints, most } = mixOptions.value;
  const choice = choose(shelf.value, constraints ?? {}, most ?? NO_WISH.most);
  return choice.ok ? null : mixFaultWords(choice.fault, (pigment) => labelOn(pigment, shelf.value));
});
