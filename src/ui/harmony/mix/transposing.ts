import { batch, signal } from '@preact/signals';
import { canonical } from '../../../book/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { type Move, moveAll } from '../../../harmony/move.ts';
import type { Transposition } from '../../../harmony/transpose.ts';
import { mixFaultWords } from '../../../mixture/faults.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { workMixtures } from '../../jobs.ts';
import { job } from '../../state/job.ts';
import { complain, shelf } from '../../studio.ts';
import { mixOptions, wishKey } from './decided.ts';
import { labelOn } from './named.ts';

/** Move of the open harmony within reach; null until it is computed. */
export const move = signal<Move | null>(null);
/** Whether the harmony is shown and mixed with that move. */
export const isTransposed = signal(false);
export const transposing = job();

/** Latest result, with the key of its input and its shelf. */
const found = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly result: Transposition;
} | null>(null);

const ofColours = (colours: readonly Lab[]): string => canonical([colours, wishKey.value]);

/** Comparison of the mappings; null if colours, preferences or shelf have changed since. */
export function comparisonOf(colours: readonly Lab[]): Transposition | null {
  const last = found.value;
  return last && last.on === shelf.value && last.of === ofColours(colours) ? last.result : null;
}

/** Computes the move of these colours (CIELAB, D65) within reach, and then applies it. */
export async function transposeAll(colours: readonly Lab[]): Promise<void> {
  const on = shelf.value;
  const of = ofColours(colours);
  if (comparisonOf(colours)) return show(found.value!.result.transposed.move);
  const { most = 4, constraints = {} } = mixOptions.value;
  const result = await transposing.run((options) =>
    workMixtures('transpose', { colours, shelf: on, options: { most, constraints } }, options),
  );
  if (result === null) return;
  if (!result.ok) return complain(mixFaultWords(result.fault, (pigment) => labelOn(pigment, on)));
  batch(() => {
    found.value = { of, on, result: result.value };
    show(result.value.transposed.move);
  });
}

function show(next: Move): void {
  batch(() => {
    move.value = next;
    isTransposed.value = true;
  });
}

/** Returns to the shelf's range or to the colours as seen. */
export function untranspose(): void {
  transposing.stop();
  isTransposed.value = false;
}

/** Resets the state for another harmony. @param next its stored move; null for none */
export function openMove(next: Move | null): void {
  transposing.stop();
  batch(() => {
    move.value = next;
    isTransposed.value = next !== null;
  });
}

/**
 * Applies the move of a harmony to one colour, CIELAB under D65.
 * @param colours the whole harmony, whose mean L* the move needs
 */
export function movedWith(lab: Lab, colours: readonly Lab[], all: Move): Lab {
  const mean = colours.reduce((sum, [L]) => sum + L, 0) / Math.max(1, colours.length);
  const L = mean + all.lightness * (lab[0] - mean) + all.shift;
  return moveAll([lab], { ...all, lightness: 1, shift: L - lab[0] })[0]!;
}
