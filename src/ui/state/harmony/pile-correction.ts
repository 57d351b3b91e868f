import { batch, computed, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { type VariantWay, variantTarget } from '../../../harmony/variant-target.ts';
import { addFaultWords } from '../../../messages/mixture-messages.ts';
import type { PileCorrection } from '../../../mixture/correct-pile.ts';
import type { MixturePart } from '../../../mixture/mixture-types.ts';
import { ofParts, predictColour } from '../../../mixture/predict.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { job } from '../job.ts';
import { shelfLabelOf } from '../shelf-labels.ts';
import { shelf, showError } from '../studio.ts';
import { runMixtureJob } from '../worker-jobs.ts';
import { mixOptions, preferencesKey } from './mixing-decisions.ts';

/** A pile that came out wrong: its contents, amount and colour. */
interface PileToCorrect {
  readonly target: Lab;
  readonly parts: readonly MixturePart[];
  /** Volume; null if unknown. */
  readonly cm3: number | null;
  /** Corrections of the predicted colour by half a small variant each, in order. */
  readonly steps: readonly VariantWay[];
  /** Measured colour, CIELAB under D65, which replaces the steps; null if not measured. */
  readonly measured: Lab | null;
}

/** The pile to correct; null before the form first opens. */
export const pileToCorrect = signal<PileToCorrect | null>(null);
export const correctionJob = job();
const latestCorrection = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly result: PileCorrection;
} | null>(null);

/** Half of a small variant: about the finest step that an untrained eye sees. */
const halfVariantStep = (lab: Lab, way: VariantWay): Lab => {
  const { lab: far } = variantTarget(lab, way, 'small');
  return [(lab[0] + far[0]) / 2, (lab[1] + far[1]) / 2, (lab[2] + far[2]) / 2];
};

/** Predicted colour, CIELAB under D65; null if the pile is empty or the shelf lacks a pigment. */
export const predictedColour = computed<Lab | null>(() => {
  const parts = pileToCorrect.value?.parts.filter((one) => one.parts > 0) ?? [];
  const isHere = ({ pigment }: MixturePart) =>
    shelf.value.paints.some((one) => one.pigment === pigment);
  if (parts.length === 0 || !parts.every(isHere)) return null;
  return predictColour(ofParts(parts), shelf.value);
});

/** Observed colour, CIELAB under D65: measured, or predicted and corrected by the steps. */
export const observedColour = computed<Lab | null>(() => {
  const from = predictedColour.value;
  const wrong = pileToCorrect.value;
  if (!from || !wrong) return null;
  return wrong.measured ?? wrong.steps.reduce(halfVariantStep, from);
});

/** Starts the correction of a mixture; the same target and pigments leave the state unchanged. */
export function startCorrection(target: Lab, parts: readonly MixturePart[]): void {
  const last = pileToCorrect.peek();
  const names = (all: readonly MixturePart[]) => all.map((one) => one.pigment).join();
  if (last && canonical(last.target) === canonical(target) && names(last.parts) === names(parts))
    return;
  pileToCorrect.value = { target, parts, cm3: null, steps: [], measured: null };
}

/** Changes the pile; without a pile it does nothing. */
export function changePile(change: Partial<Omit<PileToCorrect, 'target'>>): void {
  if (pileToCorrect.value) pileToCorrect.value = { ...pileToCorrect.value, ...change };
}

/** Corrects the observed colour by one step; this discards a measurement. */
export function addObservedStep(way: VariantWay): void {
  const wrong = pileToCorrect.value;
  if (wrong) changePile({ steps: [...wrong.steps, way], measured: null });
}

const correctionKey = (): string => canonical([pileToCorrect.value, preferencesKey.value]);

/**
 * Latest correction; null if there is none. `isOf`: pile, shelf and preferences are still the same.
 */
export function latestCorrectionState() {
  const last = latestCorrection.value;
  return last && { ...last, isOf: last.on === shelf.value && last.of === correctionKey() };
}

/** Searches for additions that bring the observed colour to the target. */
export async function findAdditions(): Promise<void> {
  const wrong = pileToCorrect.value;
  const seen = observedColour.value;
  if (!wrong || !seen) return;
  const [on, of] = [shelf.value, correctionKey()];
  const { constraints = {} } = mixOptions.value;
  const result = await correctionJob.run((options) =>
    runMixtureJob(
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
  if (!result.ok) return showError(addFaultWords(result.fault, (one) => shelfLabelOf(one, on)));
  batch(() => {
    latestCorrection.value = { of, on, result: result.value };
  });
}
