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

/** The pile at hand: what went into it, how much there is, and what it looks like. */
interface Wrong {
  readonly target: Lab;
  readonly parts: readonly Part[];
  readonly cm3: number | null;
  /** Half steps from what the parts promise, in the order in which they were touched. */
  readonly steps: readonly Way[];
  /** Measured, which then counts instead of the steps. */
  readonly measured: Lab | null;
}

export const pile = signal<Wrong | null>(null);
export const mending = job();
const found = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly result: Correction;
} | null>(null);

/** Half of a small step, which is as fine as an eye without training sees. */
const step = (lab: Lab, way: Way): Lab => {
  const { lab: far } = vary(lab, way, 'small');
  return [(lab[0] + far[0]) / 2, (lab[1] + far[1]) / 2, (lab[2] + far[2]) / 2];
};

/** What the parts promise; null where nothing is in the pile, or not on this shelf. */
export const promised = computed<Lab | null>(() => {
  const parts = pile.value?.parts.filter((one) => one.parts > 0) ?? [];
  const isHere = ({ pigment }: Part) => shelf.value.paints.some((one) => one.pigment === pigment);
  if (parts.length === 0 || !parts.every(isHere)) return null;
  return predict(ofParts(parts), shelf.value);
});

/** What the pile came out as. */
export const cameOut = computed<Lab | null>(() => {
  const from = promised.value;
  const wrong = pile.value;
  if (!from || !wrong) return null;
  return wrong.measured ?? wrong.steps.reduce(step, from);
});

/** Puts a mixture's pile on the bench; the same one stays as it is. */
export function layPile(target: Lab, parts: readonly Part[]): void {
  const last = pile.peek();
  const names = (all: readonly Part[]) => all.map((one) => one.pigment).join();
  if (last && canonical(last.target) === canonical(target) && names(last.parts) === names(parts))
    return;
  pile.value = { target, parts, cm3: null, steps: [], measured: null };
}

export function changePile(change: Partial<Omit<Wrong, 'target'>>): void {
  if (pile.value) pile.value = { ...pile.value, ...change };
}

export function touch(way: Way): void {
  const wrong = pile.value;
  if (wrong) changePile({ steps: [...wrong.steps, way], measured: null });
}

const ofPile = (): string => canonical([pile.value, wishKey.value]);

/** What was found last, and whether it is still about the pile as it is told. */
export function correction() {
  const last = found.value;
  return last && { ...last, isOf: last.on === shelf.value && last.of === ofPile() };
}

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
