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

/** One way and amount. */
export interface Ask {
  readonly way: Way;
  readonly amount: Amount;
}
export const idOf = ({ way, amount }: Ask): string => `${way}-${amount}`;
/** The middle of each row first: what is looked at most. */
const ALL: readonly Ask[] = (
  ['small', 'middle', 'large'] as const satisfies typeof AMOUNTS
).flatMap((amount) => WAYS.map((way) => ({ way, amount })));

/** Where variants of a colour begin: what is to be mixed, and the pile in use; null until that is known. */
const originAt = (i: number): Origin | null => {
  const [lab, mixture] = [targets.value[i], used.value[i]];
  return lab && mixture ? { lab, mixture } : null;
};
const nameOf = (origins: readonly Origin[], more: unknown): string =>
  canonical([
    origins.map(({ lab, mixture: { recipe, parts } }) => [lab, recipe, parts]),
    wishKey.value,
    more,
  ]);

interface Found<T> {
  readonly of: string;
  readonly on: Shelf;
  readonly result: T;
}

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

// One colour, all eighteen.

export const varying = job();
const found = signal<Found<ReadonlyMap<string, Mixed>> | null>(null);
/** What the painter stopped; it is not begun again by itself. */
const stopped = signal('');

const origin = computed(() => originAt(chosen.value));
const asked = computed(() => (origin.value ? nameOf([origin.value], 'all') : null));
export const isStopped = computed(() => asked.value !== null && stopped.value === asked.value);

/** What the shelf makes of each variant of the colour on the bench, by {@link idOf}; null until it is known. */
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

/** The variants are in view or near it: what nobody looks at is not worked out. */
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
    // Failed: not tried again until something changes.
    else if (asked.peek() === of) stopped.value = of;
  });
});

// The whole harmony, one way.

/** What is tried on the whole harmony; null while nothing is. */
export const wholeAsk = signal<Ask | null>(null);
export const wholeVarying = job();
const foundWhole = signal<Found<readonly Mixed[]> | null>(null);

const origins = computed<readonly Origin[] | null>(() => {
  const all = targets.value.map((_, i) => originAt(i));
  return all.every((one) => one !== null) ? all : null;
});

/** Every colour of the harmony altered so; null until it is known, or where the harmony has changed since. */
export const variedWhole = computed<readonly Mixed[] | null>(() => {
  const [last, ask, all] = [foundWhole.value, wholeAsk.value, origins.value];
  if (!last || !ask || !all || last.on !== shelf.value) return null;
  return last.of === nameOf(all, ask) ? last.result : null;
});

export async function tryWhole(ask: Ask): Promise<void> {
  const all = origins.peek();
  if (!all) return;
  wholeAsk.value = ask;
  const [of, on] = [nameOf(all, ask), shelf.value];
  const made = await work(wholeVarying, all, [ask]);
  if (made) foundWhole.value = { of, on, result: made };
  else if (wholeAsk.peek() === ask) wholeAsk.value = null;
}

export function leaveWhole(): void {
  wholeVarying.stop();
  wholeAsk.value = null;
}
