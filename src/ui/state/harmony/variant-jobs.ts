import { computed, effect, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { MixedVariant, Origin } from '../../../harmony/mixed-variant.ts';
import {
  type AMOUNTS,
  VARIANT_WAYS,
  type VariantAmount,
  type VariantWay,
} from '../../../harmony/variant-target.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { job } from '../job.ts';
import { shelfLabelOf } from '../shelf-labels.ts';
import { shelf, showError } from '../studio.ts';
import { runMixtureJob } from '../worker-jobs.ts';
import { selectedIndex, targets } from './current-harmony.ts';
import { contradiction, mixOptions, preferencesKey } from './mixing-decisions.ts';
import { mixturesInUse } from './mixtures-in-use.ts';

/** A variant to compute: direction and amount. */
interface VariantRequest {
  readonly way: VariantWay;
  readonly amount: VariantAmount;
}
export const variantId = ({ way, amount }: VariantRequest): string => `${way}-${amount}`;
/** All variants, smallest amount first: these are viewed most. */
const ALL_VARIANTS: readonly VariantRequest[] = (
  ['small', 'middle', 'large'] as const satisfies typeof AMOUNTS
).flatMap((amount) => VARIANT_WAYS.map((way) => ({ way, amount })));

/** Origin of a colour's variants: its target and the mixture in use; null until known. */
const originAt = (i: number): Origin | null => {
  const [lab, mixture] = [targets.value[i], mixturesInUse.value[i]];
  return lab && mixture ? { lab, mixture } : null;
};
/** Key of a computation: origins, preferences, and `more`. */
const variantJobKey = (origins: readonly Origin[], more: unknown): string =>
  canonical([
    origins.map(({ lab, mixture: { recipe, parts } }) => [lab, recipe, parts]),
    preferencesKey.value,
    more,
  ]);

/** A result with the key of its input and its shelf. */
interface KeyedResult<T> {
  readonly of: string;
  readonly on: Shelf;
  readonly result: T;
}

/** Runs the worker job; null if stopped, replaced or failed, after an error message. */
async function runVariantJob(
  run: typeof variantJob,
  origins: readonly Origin[],
  asks: readonly VariantRequest[],
): Promise<MixedVariant[] | null> {
  const on = shelf.value;
  const { most = 4, constraints = {} } = mixOptions.value;
  const result = await run.run((options) =>
    runMixtureJob('vary', { origins, asks, shelf: on, options: { most, constraints } }, options),
  );
  if (result === null) return null;
  if (result.ok) return result.value;
  showError(mixFaultWords(result.fault, (pigment) => shelfLabelOf(pigment, on)));
  return null;
}

// All eighteen variants of the selected colour.

export const variantJob = job();
const latestVariants = signal<KeyedResult<ReadonlyMap<string, MixedVariant>> | null>(null);
/** Key of the computation that was stopped or failed; it does not restart by itself. */
const stoppedKey = signal('');

const origin = computed(() => originAt(selectedIndex.value));
const variantsKey = computed(() => (origin.value ? variantJobKey([origin.value], 'all') : null));
export const isVariantJobStopped = computed(
  () => variantsKey.value !== null && stoppedKey.value === variantsKey.value,
);

/** Mixed variants of the selected colour by {@link variantId}; null until known. */
export const mixedVariants = computed<ReadonlyMap<string, MixedVariant> | null>(() => {
  const last = latestVariants.value;
  return last && last.of === variantsKey.value && last.on === shelf.value ? last.result : null;
});

export function stopVariantJob(): void {
  stoppedKey.value = variantsKey.value ?? '';
  variantJob.stop();
}
export const resumeVariantJob = (): void => {
  stoppedKey.value = '';
};

/** Whether the variants are in or near the viewport; they are computed only then. */
export const isInView = signal(false);
let runningKey = '';
effect(() => {
  if (!isInView.value) return;
  const [from, of, on] = [origin.value, variantsKey.value, shelf.value];
  if (!from || of === null || mixedVariants.value || contradiction.value !== null) return;
  if (of === runningKey || isVariantJobStopped.value) return;
  runningKey = of;
  void runVariantJob(variantJob, [from], ALL_VARIANTS).then((all) => {
    if (runningKey === of) runningKey = '';
    if (all)
      latestVariants.value = { of, on, result: new Map(all.map((one) => [variantId(one), one])) };
    // Failed or stopped: no retry until the input changes.
    else if (variantsKey.peek() === of) stoppedKey.value = of;
  });
});

// One variant of the whole harmony.

/** Variant previewed for the whole harmony; null for none. */
export const harmonyVariantRequest = signal<VariantRequest | null>(null);
export const harmonyVariantJob = job();
const latestHarmonyVariant = signal<KeyedResult<readonly MixedVariant[]> | null>(null);

const origins = computed<readonly Origin[] | null>(() => {
  const all = targets.value.map((_, i) => originAt(i));
  return all.every((one) => one !== null) ? all : null;
});

/** Mixed variant of every colour; null until known, and after a change of the harmony or shelf. */
export const mixedHarmonyVariant = computed<readonly MixedVariant[] | null>(() => {
  const [last, ask, all] = [latestHarmonyVariant.value, harmonyVariantRequest.value, origins.value];
  if (!last || !ask || !all || last.on !== shelf.value) return null;
  return last.of === variantJobKey(all, ask) ? last.result : null;
});

/** Previews a variant for the whole harmony. Does nothing while a colour has no mixture. */
export async function previewHarmonyVariant(ask: VariantRequest): Promise<void> {
  const all = origins.peek();
  if (!all) return;
  harmonyVariantRequest.value = ask;
  const [of, on] = [variantJobKey(all, ask), shelf.value];
  const made = await runVariantJob(harmonyVariantJob, all, [ask]);
  if (made) latestHarmonyVariant.value = { of, on, result: made };
  else if (harmonyVariantRequest.peek() === ask) harmonyVariantRequest.value = null;
}

/** Closes the preview and stops its job. */
export function closeHarmonyPreview(): void {
  harmonyVariantJob.stop();
  harmonyVariantRequest.value = null;
}
