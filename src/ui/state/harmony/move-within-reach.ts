import { batch, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { type HarmonyMove, moveAll } from '../../../harmony/harmony-move.ts';
import type { Transposition } from '../../../harmony/transpose.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { job } from '../job.ts';
import { shelfLabelOf } from '../shelf-labels.ts';
import { shelf, showError } from '../studio.ts';
import { runMixtureJob } from '../worker-jobs.ts';
import { mixOptions, preferencesKey } from './mixing-decisions.ts';

/** Move of the open harmony within reach; null until it is computed. */
export const harmonyMove = signal<HarmonyMove | null>(null);
/** Whether the harmony is shown and mixed with that move. */
export const isWithinReachShown = signal(false);
export const moveJob = job();

/** Latest result, with the key of its input and its shelf. */
const latestTransposition = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly result: Transposition;
} | null>(null);

const transpositionKey = (colours: readonly Lab[]): string =>
  canonical([colours, preferencesKey.value]);

/** Comparison of the mappings; null if colours, preferences or shelf have changed since. */
export function moveComparisonFor(colours: readonly Lab[]): Transposition | null {
  const last = latestTransposition.value;
  return last && last.on === shelf.value && last.of === transpositionKey(colours)
    ? last.result
    : null;
}

/** Computes the move of these colours (CIELAB, D65) within reach, and then applies it. */
export async function moveWithinReach(colours: readonly Lab[]): Promise<void> {
  const on = shelf.value;
  const of = transpositionKey(colours);
  if (moveComparisonFor(colours))
    return showMove(latestTransposition.value!.result.transposed.move);
  const { most = 4, constraints = {} } = mixOptions.value;
  const result = await moveJob.run((options) =>
    runMixtureJob('transpose', { colours, shelf: on, options: { most, constraints } }, options),
  );
  if (result === null) return;
  if (!result.ok)
    return showError(mixFaultWords(result.fault, (pigment) => shelfLabelOf(pigment, on)));
  batch(() => {
    latestTransposition.value = { of, on, result: result.value };
    showMove(result.value.transposed.move);
  });
}

function showMove(next: HarmonyMove): void {
  batch(() => {
    harmonyMove.value = next;
    isWithinReachShown.value = true;
  });
}

/** Returns to the shelf's range or to the colours as seen. */
export function cancelMove(): void {
  moveJob.stop();
  isWithinReachShown.value = false;
}

/** Resets the state for another harmony. @param next its stored move; null for none */
export function resetMove(next: HarmonyMove | null): void {
  moveJob.stop();
  batch(() => {
    harmonyMove.value = next;
    isWithinReachShown.value = next !== null;
  });
}

/**
 * Applies the move of a harmony to one colour, CIELAB under D65.
 * @param colours the whole harmony, whose mean L* the move needs
 */
export function applyMoveTo(lab: Lab, colours: readonly Lab[], all: HarmonyMove): Lab {
  const mean = colours.reduce((sum, [L]) => sum + L, 0) / Math.max(1, colours.length);
  const L = mean + all.lightness * (lab[0] - mean) + all.shift;
  return moveAll([lab], { ...all, lightness: 1, shift: L - lab[0] })[0]!;
}
