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

/** A target by its numbers. */
export const nameOfLab = (lab: Lab): string => lab.map((v) => v.toFixed(4)).join(' ');

/** What the painter asks of all mixtures: the open harmony's own wish, else the sitting's. */
export const wish = signal<Wish>(NO_WISH);
/** What was asked for last in this sitting. */
let sitting: Wish = NO_WISH;
/** Mixtures chosen by hand, by target. */
const chosen = signal<ReadonlyMap<string, Mixture>>(new Map());
/** The painter has had a say in the mixtures of the harmony that is open: from then on they are kept too. */
export const hasSay = signal(false);

interface Past {
  readonly words: string;
  readonly wish: Wish;
  readonly sitting: Wish;
  readonly chosen: ReadonlyMap<string, Mixture>;
}
const past = history<Past>();
/** What the next undo takes back; null where there is nothing. */
export const lastSaid = computed(() => past.latest.value?.words ?? null);

function say(words: string, act: () => void): void {
  batch(() => {
    past.push({ words, wish: wish.value, sitting, chosen: chosen.value });
    hasSay.value = true;
    act();
  });
}

/** Asks for something else. Mixtures chosen by hand under another wish are given up, until undone. */
export function changeWish(change: Partial<Wish>, words: string): void {
  const next = { ...wish.value, ...change };
  if (canonical(next) === canonical(wish.value)) return;
  say(words, () => {
    wish.value = next;
    sitting = next;
    chosen.value = new Map();
  });
}

/** Uses a mixture for a target; null goes back to the simplest. */
export function takeMixture(target: Lab, mixture: Mixture | null, words: string): void {
  say(words, () => {
    const next = new Map(chosen.value);
    if (mixture) next.set(nameOfLab(target), mixture);
    else next.delete(nameOfLab(target));
    chosen.value = next;
  });
}

/** Mixtures that come with a decision made elsewhere, which has its own way back. */
export function bringMixtures(all: readonly (readonly [Lab, Mixture])[]): void {
  batch(() => {
    hasSay.value = true;
    chosen.value = new Map([
      ...chosen.value,
      ...all.map(([lab, mixture]) => [nameOfLab(lab), mixture] as const),
    ]);
  });
}

export function undoSaid(): void {
  batch(() => {
    const last = past.pop();
    if (!last) return;
    wish.value = last.wish;
    sitting = last.sitting;
    chosen.value = last.chosen;
  });
}

/** The mixture chosen by hand for a target; null where the simplest serves. */
export function chosenFor(lab: Lab): Mixture | null {
  const mixture = chosen.value.get(nameOfLab(lab));
  // On a shelf that makes something else of it, it is no answer.
  return mixture && holdsOn(shelf.value, mixture) ? mixture : null;
}

/**
 * Another harmony is opened, with the mixtures that its record says were chosen by hand, and with the
 * wish that they were kept under; without one the sitting's holds.
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

/** The wish by which answers are told apart. */
export const keyOfWish = (asked: Wish): string => canonical({ ...asked });
export const wishKey = computed(() => keyOfWish(wish.value));
/** The wish as a record keeps it; null where nothing is asked. */
export const wishToKeep = computed(() => (wishKey.value === NO_WISH_KEY ? null : wish.value));
const NO_WISH_KEY = keyOfWish(NO_WISH);

/** Pigments of the studio's own that a hazard leaves out: only its shelf knows how dangerous they are. */
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

export const mixOptions = computed(() => mixOptionsOf(shelf.value, wish.value, dangerous.value));
/** The same for choosing a palette, which is chosen from the whole shelf again. */
export const paletteOptions = computed(() =>
  mixOptionsOf(shelf.value, { ...wish.value, only: null }, dangerous.value),
);

/** Which wishes exclude each other, in a sentence; null where they go together. */
export const contradiction = computed(() => {
  const { constraints, most } = mixOptions.value;
  const choice = choose(shelf.value, constraints ?? {}, most ?? NO_WISH.most);
  return choice.ok ? null : mixFaultWords(choice.fault, (pigment) => labelOn(pigment, shelf.value));
});
