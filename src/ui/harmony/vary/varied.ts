import { computed, effect, signal } from '@preact/signals';
import { canonical } from '../../../book/digest.ts';
import type { Mixed, Origin } from '../../../harmony/variant.ts';
import { type AMOUNTS, type Amount, WAYS, type Way } from '../../../harmony/vary.ts';
import { mixFaultWords } from '../../../mixture/faults.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { workMixtures } from '../../jobs.ts';
import { job } from '../../state/job.ts';
import { complain, shelf } from '../../studio.ts';
import { contradiction, mixOptions, wishKey } from '../mix/decided.ts';
import { labelOn } from '../mix/named.ts';
import { used } from '../mix/used.ts';
import { chosen, targets } from '../state.ts';

/** A variant to compute: direction and amount. */
export interface Ask {
  readonly way: Way;
  readonly amount: Amount;
}
export const idOf = ({ way, amount }: Ask): string => `${way}-${amount}`;
/** All variants, smallest amount first: these are viewed most. */
const ALL: readonly Ask[] = (
  ['small', 'middle', 'large'] as const satisfies typeof AMOUNTS
).flatMap((amount) => WAYS.map((way) => ({ way, amount })));

/** Origin of a colour's variants: its target and the mixture in use; null until known. */
const originAt = (i: number): Origin | null => {
  const [lab, mixture] = [targets.value[i], used.value[i]];
  return lab && mixture ? { lab, mixture } : null;
};
/** Key of a computation: origins, preferences, and `more`. */
const nameOf = (origins: readonly Origin[], more: unknown): string =>
  canonical([
    origins.map(({ lab, mixture: { recipe, parts } }) => [lab, recipe, parts]),
    wishKey.value,
    more,
  ]);

/** A result with the key of its input and its shelf. */
interface Found<T> {
  readonly of: string;
  readonly on: Shelf;
  readonly result: T;
}

/** Runs the worker job; null if stopped, replaced or failed, after an error message. */
async function work(
  run: typeof varying,
  origins: readonly Origin[],
  asks: readonly Ask[],
): Promise<Mixed[] | null> {
  const on = shelf.value;
  const { most = 4, constraints = {} } = mixOptions.value;
  const result = await run.run((options) =>
    workMixtures('vary', { origins, asks, shelf: on, options: { most, constraints } }, options),
  );
  if (result === null) return null;
  if (result.ok) return result.value;
  complain(mixFaultWords(result.fault, (pigment) => labelOn(pigment, on)));
  return null;
}

// All eighteen variants of the selected colour.

export const varying = job();
const found = signal<Found<ReadonlyMap<string, Mixed>> | null>(null);
/** Key of the computation that was stopped or failed; it does not restart by itself. */
const stopped = signal('');

const origin = computed(() => originAt(chosen.value));
const asked = computed(() => (origin.value ? nameOf([origin.value], 'all') : null));
export const isStopped = computed(() => asked.value !== null && stopped.value === asked.value);

/** Mixed variants of the selected colour by {@link idOf}; null until known. */
export const varied = computed<ReadonlyMap<string, Mixed> | null>(() => {
  const last = found.value;
  return last && last.of === asked.value && last.on === shelf.value ? last.result : null;
});

export function stopVarying(): void {
  stopped.value = asked.value ?? '';
  varying.stop();
}
export const goOnVarying = (): void => {
  stopped.value = '';
};

/** Whether the variants are in or near the viewport; they are computed only then. */
export const isLookedAt = signal(false);
let under = '';
effect(() => {
  if (!isLookedAt.value) return;
  const [from, of, on] = [origin.value, asked.value, shelf.value];
  if (!from || of === null || varied.value || contradiction.value !== null) return;
  if (of === under || isStopped.value) return;
  under = of;
  void work(varying, [from], ALL).then((all) => {
    if (under === of) under = '';
    if (all) found.value = { of, on, result: new Map(all.map((one) => [idOf(one), one])) };
    // Failed or stopped: no retry until the input changes.
    else if (asked.peek() === of) stopped.value = of;
  });
});

// One variant of the whole harmony.

/** Variant previewed for the whole harmony; null for none. */
export const wholeAsk = signal<Ask | null>(null);
export const wholeVarying = job();
const foundWhole = signal<Found<readonly Mixed[]> | null>(null);

const origins = computed<readonly Origin[] | null>(() => {
  const all = targets.value.map((_, i) => originAt(i));
  return all.every((one) => one !== null) ? all : null;
});

/** Mixed variant of every colour; null until known, and after a change of the harmony or shelf. */
export const variedWhole = computed<readonly Mixed[] | null>(() => {
  const [last, ask, all] = [foundWhole.value, wholeAsk.value, origins.value];
  if (!last || !ask || !all || last.on !== shelf.value) return null;
  return last.of === nameOf(all, ask) ? last.result : null;
});

/** Previews a variant for the whole harmony. Does nothing while a colour has no mixture. */
export async function tryWhole(ask: Ask): Promise<void> {
  const all = origins.peek();
  if (!all) return;
  wholeAsk.value = ask;
  const [of, on] = [nameOf(all, ask), shelf.value];
  const made = await work(wholeVarying, all, [ask]);
  if (made) foundWhole.value = { of, on, result: made };
  else if (wholeAsk.peek() === ask) wholeAsk.value = null;
}

/** Closes the preview and stops its job. */
export function leaveWhole(): void {
  wholeVarying.stop();
  wholeAsk.value = null;
}
