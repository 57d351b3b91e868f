import { computed, effect, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { Cloth, ClothRequest, DraperyFault, Garment } from '../../../drapery/cloth-types.ts';
import { draperyFaultWords } from '../../../messages/drapery-messages.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import type { Result } from '../../../result.ts';
import { job } from '../job.ts';
import { shelf, showError } from '../studio.ts';
import { drapeCloths } from '../worker-jobs.ts';
import { shelfPigmentLabel } from './cloth-text.ts';
import { clothOnly, type SchemeGarment, scheme } from './drapery-scheme.ts';

/** The computed cloth, or why it cannot be computed. */
type ClothResult = Result<Cloth, DraperyFault>;

/** Results on one shelf, by key of the request. A change of shelf makes them all invalid. */
const clothResults = signal<{
  readonly on: Shelf;
  readonly cloths: ReadonlyMap<string, ClothResult>;
}>({
  on: shelf.peek(),
  cloths: new Map(),
});
/**
 * Most cached results; the oldest go first. A scheme has at most 12 cloths (4 garments, each with
 * lining and trim).
 */
const MAX_CACHED_CLOTHS = 200;
/** True after the painter stopped the computation, or after it failed. */
export const isDrapingStopped = signal(false);
const draping = job({
  onError: (error) => {
    isDrapingStopped.value = true;
    showError((error as Error).message);
  },
});
/** Progress of the computation, 0…1; null while none runs. */
export const drapingProgress = draping.progress;

// The name is part of the key although it does not change the ladder: fault messages contain it.
const keyOf = (wish: ClothRequest): string => canonical(clothOnly(wish));

const resultsOn = (on: Shelf) =>
  clothResults.value.on === on ? clothResults.value.cloths : new Map();

/** Result for a cloth on the current shelf; null while it is missing. */
export const clothResultOf = (wish: ClothRequest): ClothResult | null =>
  resultsOn(shelf.value).get(keyOf(wish)) ?? null;

const clothRequestsOf = ({ wish }: SchemeGarment): ClothRequest[] =>
  [wish, wish.lining, wish.trim].filter((one) => one !== undefined).map(clothOnly);

/** A garment with its lining and trim; null while a cloth is missing or has a fault. */
export function garmentOf({ wish }: SchemeGarment): Garment | null {
  const cloth = clothResultOf(wish);
  if (!cloth?.ok) return null;
  const edge = wish.trim ? clothResultOf(wish.trim) : null;
  const inner = wish.lining ? clothResultOf(wish.lining) : null;
  if ((wish.trim && !edge?.ok) || (wish.lining && !inner?.ok)) return null;
  return {
    ...cloth.value,
    lining: inner?.ok ? inner.value : null,
    trim: edge?.ok ? edge.value : null,
  };
}

export const garments = computed(() => scheme.value.garments.map(garmentOf));
/** Whether every garment is computed without a fault. */
export const areAllComputed = computed(
  () => garments.value.length > 0 && garments.value.every((one) => one !== null),
);

/** Why a cloth cannot be computed, as a sentence; null if it can, or is not computed yet. */
export function clothFaultWords(wish: ClothRequest): string | null {
  const cloth = clothResultOf(wish);
  if (cloth === null || cloth.ok) return null;
  const { fault } = cloth;
  switch (fault.code) {
    case 'no-range':
    case 'no-glaze':
    case 'wants-more':
      return draperyFaultWords(fault, shelfPigmentLabel);
    default:
      return mixFaultWords(fault, shelfPigmentLabel);
  }
}

/** Keys of the cloths that the running job computes; empty while none runs. */
let runningKeys = '';

async function computeCloths(missing: readonly ClothRequest[], on: Shelf): Promise<void> {
  const all = missing.map(keyOf).join();
  runningKeys = all;
  const learn = (wish: ClothRequest, cloth: ClothResult) => {
    const before = clothResults.peek();
    const kept = before.on === on ? [...before.cloths].slice(-MAX_CACHED_CLOTHS) : [];
    clothResults.value = { on, cloths: new Map([...kept, [keyOf(wish), cloth]]) };
  };
  await draping.run(({ signal, onProgress: onNews }) =>
    drapeCloths(
      { wishes: missing, shelf: on },
      {
        signal,
        onNews: ({ at, cloth, done }) => {
          if (signal.aborted) return;
          learn(missing[at]!, cloth);
          onNews(done);
        },
      },
    ),
  );
  if (drapingProgress.peek() === null) runningKeys = '';
}

/** Stops the computation; finished cloths stay. */
export function stopDraping(): void {
  isDrapingStopped.value = true;
  draping.stop();
}

/** Resumes the computation of missing cloths. */
export const resumeDraping = (): void => {
  isDrapingStopped.value = false;
};

// Compute every cloth of the scheme that has no result; cancel the job when none is missing.
effect(() => {
  const on = shelf.value;
  const wishes = scheme.value.garments.flatMap(clothRequestsOf);
  if (isDrapingStopped.value) return;
  const have = clothResults.peek().on === on ? clothResults.peek().cloths : new Map();
  const missing = wishes.filter(
    (wish, i) =>
      !have.has(keyOf(wish)) && wishes.findIndex((one) => keyOf(one) === keyOf(wish)) === i,
  );
  const all = missing.map(keyOf).join();
  if (missing.length === 0) {
    draping.cancel();
    return;
  }
  if (all === runningKeys && drapingProgress.peek() !== null) return;
  void computeCloths(missing, on);
});
