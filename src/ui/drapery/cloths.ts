import { computed, effect, signal } from '@preact/signals';
import { canonical } from '../../book/digest.ts';
import type { Cloth, ClothWish, DraperyFault, Garment } from '../../drapery/fold.ts';
import { draperyFaultWords } from '../../drapery/remarks.ts';
import { mixFaultWords } from '../../mixture/faults.ts';
import type { Shelf } from '../../pigment/shelf.ts';
import type { Result } from '../../result.ts';
import { drapeCloths } from '../jobs.ts';
import { job } from '../state/job.ts';
import { complain, shelf } from '../studio.ts';
import { labelOf } from './spoken.ts';
import { bare, scheme, type Worn } from './state.ts';

/** The computed cloth, or why it cannot be computed. */
type Answered = Result<Cloth, DraperyFault>;

/** Results on one shelf, by key of the request. A change of shelf makes them all invalid. */
const found = signal<{ readonly on: Shelf; readonly cloths: ReadonlyMap<string, Answered> }>({
  on: shelf.peek(),
  cloths: new Map(),
});
/**
 * Most cached results; the oldest go first. A scheme has at most 12 cloths (4 garments, each with
 * lining and trim).
 */
const MOST_KEPT = 200;
/** True after the painter stopped the computation, or after it failed. */
export const stopped = signal(false);
const draping = job({
  onError: (error) => {
    stopped.value = true;
    complain((error as Error).message);
  },
});
/** Progress of the computation, 0…1; null while none runs. */
export const working = draping.progress;

// The name is part of the key although it does not change the ladder: fault messages contain it.
const keyOf = (wish: ClothWish): string => canonical(bare(wish));

const known = (on: Shelf) => (found.value.on === on ? found.value.cloths : new Map());

/** Result for a cloth on the current shelf; null while it is missing. */
export const answered = (wish: ClothWish): Answered | null =>
  known(shelf.value).get(keyOf(wish)) ?? null;

const wishesOf = ({ wish }: Worn): ClothWish[] =>
  [wish, wish.lining, wish.trim].filter((one) => one !== undefined).map(bare);

/** A garment with its lining and trim; null while a cloth is missing or has a fault. */
export function garmentOf({ wish }: Worn): Garment | null {
  const cloth = answered(wish);
  if (!cloth?.ok) return null;
  const edge = wish.trim ? answered(wish.trim) : null;
  const inner = wish.lining ? answered(wish.lining) : null;
  if ((wish.trim && !edge?.ok) || (wish.lining && !inner?.ok)) return null;
  return {
    ...cloth.value,
    lining: inner?.ok ? inner.value : null,
    trim: edge?.ok ? edge.value : null,
  };
}

export const garments = computed(() => scheme.value.garments.map(garmentOf));
/** Whether every garment is computed without a fault. */
export const isWhole = computed(
  () => garments.value.length > 0 && garments.value.every((one) => one !== null),
);

/** Why a cloth cannot be computed, as a sentence; null if it can, or is not computed yet. */
export function troubleOf(wish: ClothWish): string | null {
  const cloth = answered(wish);
  if (cloth === null || cloth.ok) return null;
  const { fault } = cloth;
  switch (fault.code) {
    case 'no-range':
    case 'no-glaze':
    case 'wants-more':
      return draperyFaultWords(fault, labelOf);
    default:
      return mixFaultWords(fault, labelOf);
  }
}

/** Keys of the cloths that the running job computes; empty while none runs. */
let under = '';

async function workOut(missing: readonly ClothWish[], on: Shelf): Promise<void> {
  const all = missing.map(keyOf).join();
  under = all;
  const learn = (wish: ClothWish, cloth: Answered) => {
    const before = found.peek();
    const kept = before.on === on ? [...before.cloths].slice(-MOST_KEPT) : [];
    found.value = { on, cloths: new Map([...kept, [keyOf(wish), cloth]]) };
  };
  await draping.run(({ signal, onNews }) =>
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
  if (working.peek() === null) under = '';
}

/** Stops the computation; finished cloths stay. */
export function stop(): void {
  stopped.value = true;
  draping.stop();
}

/** Resumes the computation of missing cloths. */
export const goOn = (): void => {
  stopped.value = false;
};

// Compute every cloth of the scheme that has no result; cancel the job when none is missing.
effect(() => {
  const on = shelf.value;
  const wishes = scheme.value.garments.flatMap(wishesOf);
  if (stopped.value) return;
  const have = found.peek().on === on ? found.peek().cloths : new Map();
  const missing = wishes.filter(
    (wish, i) =>
      !have.has(keyOf(wish)) && wishes.findIndex((one) => keyOf(one) === keyOf(wish)) === i,
  );
  const all = missing.map(keyOf).join();
  if (missing.length === 0) {
    draping.cancel();
    return;
  }
  if (all === under && working.peek() !== null) return;
  void workOut(missing, on);
});
