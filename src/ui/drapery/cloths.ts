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

type Answered = Result<Cloth, DraperyFault>;

/** Cloths worked out on one shelf, by what was wished; on another shelf they answer nothing. */
const found = signal<{ readonly on: Shelf; readonly cloths: ReadonlyMap<string, Answered> }>({
  on: shelf.peek(),
  cloths: new Map(),
});
const MOST_KEPT = 200;
/** The painter stopped the work, or it failed. */
export const stopped = signal(false);
const draping = job({
  onError: (error) => {
    stopped.value = true;
    complain((error as Error).message);
  },
});
/** How much of the work under way is done, 0…1; null when there is none. */
export const working = draping.progress;

// The name of a cloth changes nothing of its ladder, but it stands in what a fault says.
const keyOf = (wish: ClothWish): string => canonical(bare(wish));

const known = (on: Shelf) => (found.value.on === on ? found.value.cloths : new Map());

/** A cloth as it is worked out; null while it is not. */
export const answered = (wish: ClothWish): Answered | null =>
  known(shelf.value).get(keyOf(wish)) ?? null;

const wishesOf = ({ wish }: Worn): ClothWish[] =>
  [wish, wish.lining, wish.trim].filter((one) => one !== undefined).map(bare);

/** A garment with all its cloths; null while one of them is not worked out, or cannot be. */
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
export const isWhole = computed(
  () => garments.value.length > 0 && garments.value.every((one) => one !== null),
);

/** What keeps a cloth from being worked out, in a sentence; null where nothing does. */
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

/** Ends the work; what was worked out so far stays. */
export function stop(): void {
  stopped.value = true;
  draping.stop();
}

/** Works out what is still missing. */
export const goOn = (): void => {
  stopped.value = false;
};

// Whatever hangs on the wall is worked out; what is no longer wished is dropped.
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
