import { batch, computed, signal } from '@preact/signals';
import { canonical } from '../../../book/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { vary, type Way } from '../../../harmony/vary.ts';
import type { Correction } from '../../../mixture/addition.ts';
import { addFaultWords } from '../../../mixture/faults.ts';
import type { Part } from '../../../mixture/mixture.ts';
import { ofParts, predict } from '../../../mixture/predict.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { workMixtures } from '../../jobs.ts';
import { job } from '../../state/job.ts';
import { complain, shelf } from '../../studio.ts';
import { mixOptions, wishKey } from './decided.ts';
import { labelOn } from './named.ts';

/** A pile that came out wrong: its contents, amount and colour. */
interface Wrong {
  readonly target: Lab;
  readonly parts: readonly Part[];
  /** Volume; null if unknown. */
  readonly cm3: number | null;
  /** Corrections of the predicted colour by half a small variant each, in order. */
  readonly steps: readonly Way[];
  /** Measured colour, CIELAB under D65, which replaces the steps; null if not measured. */
  readonly measured: Lab | null;
}

/** The pile to correct; null before the form first opens. */
export const pile = signal<Wrong | null>(null);
export const mending = job();
const found = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly result: Correction;
} | null>(null);

/** Half of a small variant: about the finest step that an untrained eye sees. */
const step = (lab: Lab, way: Way): Lab => {
  const { lab: far } = vary(lab, way, 'small');
  return [(lab[0] + far[0]) / 2, (lab[1] + far[1]) / 2, (lab[2] + far[2]) / 2];
};

/** Predicted colour, CIELAB under D65; null if the pile is empty or the shelf lacks a pigment. */
export const promised = computed<Lab | null>(() => {
  const parts = pile.value?.parts.filter((one) => one.parts > 0) ?? [];
  const isHere = ({ pigment }: Part) => shelf.value.paints.some((one) => one.pigment === pigment);
  if (parts.length === 0 || !parts.every(isHere)) return null;
  return predict(ofParts(parts), shelf.value);
});

/** Observed colour, CIELAB under D65: measured, or predicted and corrected by the steps. */
export const cameOut = computed<Lab | null>(() => {
  const from = promised.value;
  const wrong = pile.value;
  if (!from || !wrong) return null;
  return wrong.measured ?? wrong.steps.reduce(step, from);
});

/** Starts the correction of a mixture; the same target and pigments leave the state unchanged. */
export function layPile(target: Lab, parts: readonly Part[]): void {
  const last = pile.peek();
  const names = (all: readonly Part[]) => all.map((one) => one.pigment).join();
  if (last && canonical(last.target) === canonical(target) && names(last.parts) === names(parts))
    return;
  pile.value = { target, parts, cm3: null, steps: [], measured: null };
}

/** Changes the pile; without a pile it does nothing. */
export function changePile(change: Partial<Omit<Wrong, 'target'>>): void {
  if (pile.value) pile.value = { ...pile.value, ...change };
}

/** Corrects the observed colour by one step; this discards a measurement. */
export function touch(way: Way): void {
  const wrong = pile.value;
  if (wrong) changePile({ steps: [...wrong.steps, way], measured: null });
}

const ofPile = (): string => canonical([pile.value, wishKey.value]);

/**
 * Latest correction; null if there is none. `isOf`: pile, shelf and preferences are still the same.
 */
export function correction() {
  const last = found.value;
  return last && { ...last, isOf: last.on === shelf.value && last.of === ofPile() };
}

/** Searches for additions that bring the observed colour to the target. */
export async function findAdditions(): Promise<void> {
  const wrong = pile.value;
  const seen = cameOut.value;
  if (!wrong || !seen) return;
  const [on, of] = [shelf.value, ofPile()];
  const { constraints = {} } = mixOptions.value;
  const result = await mending.run((options) =>
    workMixtures(
      'add',
      {
        batch: { parts: wrong.parts, ...(wrong.cm3 === null ? {} : { cm3: wrong.cm3 }) },
        cameOut: seen,
        target: wrong.target,
        shelf: on,
        options: { constraints },
      },
      options,
    ),
  );
  if (result === null) return;
  if (!result.ok) return complain(addFaultWords(result.fault, (one) => labelOn(one, on)));
  batch(() => {
    found.value = { of, on, result: result.value };
  });
}
