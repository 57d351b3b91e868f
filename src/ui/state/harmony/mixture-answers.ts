import { signal } from '@preact/signals';
import type { Lab } from '../../../colour/lab.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import type { MixingPreferences } from '../../../mixture/mixing-preferences.ts';
import type { MixtureAnswer } from '../../../mixture/mixture-types.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { job, type TaskOptions } from '../job.ts';
import { shelf, showError } from '../studio.ts';
import { runMixtureJob } from '../worker-jobs.ts';
import {
  contradiction,
  labKey,
  mixOptions,
  preferencesKey,
  preferencesKeyOf,
} from './mixing-decisions.ts';
import { isValidOnShelf } from './still-valid.ts';

const answerKey = (lab: Lab, wished: string): string => `${wished} ${labKey(lab)}`;

/** Cache of answers by preferences and target. Valid only for the shelf in `on`. */
const answerCache = signal<{
  readonly on: Shelf;
  readonly answers: ReadonlyMap<string, MixtureAnswer>;
}>({
  on: shelf.peek(),
  answers: new Map(),
});
const cacheForShelf = (on: Shelf, { on: shelf, answers }: typeof answerCache.value) =>
  shelf === on ? answers : new Map<string, MixtureAnswer>();
const mixtureSearchJob = job();
/** Progress of the mixture search, 0…1; null while none runs. */
export const mixtureSearchProgress = mixtureSearchJob.progress;

/** Answer for a target (CIELAB, D65) under the current shelf and preferences; null until found. */
export const cachedAnswerFor = (lab: Lab): MixtureAnswer | null =>
  cacheForShelf(shelf.value, answerCache.value).get(answerKey(lab, preferencesKey.value)) ?? null;

/**
 * Caches the answers of a stored harmony that are still valid on the current shelf, so that opening
 * it starts no search for them.
 * @param wished preferences under which they were found
 */
export function cacheStoredAnswers(
  answers: readonly MixtureAnswer[],
  wished: MixingPreferences,
): void {
  const on = shelf.peek();
  addToCache(
    on,
    preferencesKeyOf(wished),
    answers.filter((answer) =>
      [answer, answer.simplest, ...answer.alternatives].every((one) => isValidOnShelf(on, one)),
    ),
  );
}

function addToCache(on: Shelf, wished: string, answers: readonly MixtureAnswer[]): void {
  const next = new Map(cacheForShelf(on, answerCache.peek()));
  for (const answer of answers) next.set(answerKey(answer.target, wished), answer);
  answerCache.value = { on, answers: next };
}

const restartCount = signal(0);
/** Restarts the search after the user stopped it. */
export const restartMixtureSearch = (): void => {
  restartCount.value++;
};

let searchedTargets = '';
let searchedShelf: Shelf | null = null;

/**
 * Searches for the missing answers to these targets; cancels a search for other targets, another
 * shelf or other preferences. Call it inside an effect: it subscribes to the shelf and preferences.
 * @param targets CIELAB under D65
 */
export function searchMissingAnswers(targets: readonly Lab[]): void {
  // `.value`, not `peek()`: a change of shelf must rerun the caller's effect.
  const on = shelf.value;
  const wished = preferencesKey.value;
  const options = mixOptions.value;
  restartCount.value;
  const missing = (labs: readonly Lab[]) => {
    const known = cacheForShelf(on, answerCache.peek());
    return labs.filter((lab) => !known.has(answerKey(lab, wished)));
  };
  if (contradiction.value !== null || missing(targets).length === 0) {
    mixtureSearchJob.cancel();
    return;
  }
  const all = targets.map((lab) => answerKey(lab, wished)).join();
  if (mixtureSearchJob.progress.peek() !== null && all === searchedTargets && on === searchedShelf)
    return;
  searchedTargets = all;
  searchedShelf = on;
  void mixtureSearchJob.run((task) => search(missing(targets), { on, wished, options }, task));
}

export const stopMixtureSearch = mixtureSearchJob.stop;

interface SearchInput {
  readonly on: Shelf;
  readonly wished: string;
  readonly options: typeof mixOptions.value;
}

async function search(
  targets: readonly Lab[],
  { on, wished, options }: SearchInput,
  task: TaskOptions,
): Promise<void> {
  if (targets.length === 0) return;
  const result = await runMixtureJob('mix', { targets, shelf: on, options }, task);
  if (!result.ok) return showError(mixFaultWords(result.fault));
  addToCache(on, wished, result.value);
}
