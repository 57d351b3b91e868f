import { signal } from '@preact/signals';
import type { Lab } from '../../colour/lab.ts';
import { mixFaultWords } from '../../mixture/faults.ts';
import type { Answer } from '../../mixture/mixture.ts';
import type { Wish } from '../../mixture/wish.ts';
import type { Shelf } from '../../pigment/shelf.ts';
import { workMixtures } from '../jobs.ts';
import { job, type TaskOptions } from '../state/job.ts';
import { complain, shelf } from '../studio.ts';
import { contradiction, keyOfWish, mixOptions, nameOfLab, wishKey } from './mix/decided.ts';
import { holdsOn } from './mix/holds.ts';

const nameOf = (lab: Lab, wished: string): string => `${wished} ${nameOfLab(lab)}`;

/** Cache of answers by preferences and target. Valid only for the shelf in `on`. */
const found = signal<{ readonly on: Shelf; readonly answers: ReadonlyMap<string, Answer> }>({
  on: shelf.peek(),
  answers: new Map(),
});
const foundOn = (on: Shelf, { on: shelf, answers }: typeof found.value) =>
  shelf === on ? answers : new Map<string, Answer>();
const searching = job();
/** Progress of the mixture search, 0…1; null while none runs. */
export const mixing = searching.progress;

/** Answer for a target (CIELAB, D65) under the current shelf and preferences; null until found. */
export const answerOf = (lab: Lab): Answer | null =>
  foundOn(shelf.value, found.value).get(nameOf(lab, wishKey.value)) ?? null;

/**
 * Caches the answers of a stored harmony that are still valid on the current shelf, so that opening
 * it starts no search for them.
 * @param wished preferences under which they were found
 */
export function remember(answers: readonly Answer[], wished: Wish): void {
  const on = shelf.peek();
  learn(
    on,
    keyOfWish(wished),
    answers.filter((answer) =>
      [answer, answer.simplest, ...answer.alternatives].every((one) => holdsOn(on, one)),
    ),
  );
}

function learn(on: Shelf, wished: string, answers: readonly Answer[]): void {
  const next = new Map(foundOn(on, found.peek()));
  for (const answer of answers) next.set(nameOf(answer.target, wished), answer);
  found.value = { on, answers: next };
}

const again = signal(0);
/** Restarts the search after the user stopped it. */
export const mixAgain = (): void => {
  again.value++;
};

let wanted = '';
let wantedOn: Shelf | null = null;

/**
 * Searches for the missing answers to these targets; cancels a search for other targets, another
 * shelf or other preferences. Call it inside an effect: it subscribes to the shelf and preferences.
 * @param targets CIELAB under D65
 */
export function wantAnswers(targets: readonly Lab[]): void {
  // `.value`, not `peek()`: a change of shelf must rerun the caller's effect.
  const on = shelf.value;
  const wished = wishKey.value;
  const options = mixOptions.value;
  again.value;
  const missing = (labs: readonly Lab[]) => {
    const known = foundOn(on, found.peek());
    return labs.filter((lab) => !known.has(nameOf(lab, wished)));
  };
  if (contradiction.value !== null || missing(targets).length === 0) {
    searching.cancel();
    return;
  }
  const all = targets.map((lab) => nameOf(lab, wished)).join();
  if (searching.progress.peek() !== null && all === wanted && on === wantedOn) return;
  wanted = all;
  wantedOn = on;
  void searching.run((task) => search(missing(targets), { on, wished, options }, task));
}

export const stopMixing = searching.stop;

interface Asked {
  readonly on: Shelf;
  readonly wished: string;
  readonly options: typeof mixOptions.value;
}

async function search(
  targets: readonly Lab[],
  { on, wished, options }: Asked,
  task: TaskOptions,
): Promise<void> {
  if (targets.length === 0) return;
  const result = await workMixtures('mix', { targets, shelf: on, options }, task);
  if (!result.ok) return complain(mixFaultWords(result.fault));
  learn(on, wished, result.value);
}
