import { batch, computed, effect, signal } from '@preact/signals';
import { runJob } from '../../../workers/jobs.ts';
import type { PaletteAnswer, PaletteJob } from '../../../workers/palette.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { STUDIO_PALETTE, type StudioRules } from '../../book/palette.ts';
import type { Bodies, Entry, Kind } from '../../book/record.ts';
import { isSample } from '../../book/sample.ts';
import type { Book, Put } from '../../book/store.ts';
import { type DayAsked, RULES, type Rules } from '../../palette/asked.ts';
import { isDay } from '../../palette/calendar.ts';
import type { PaletteFault } from '../../palette/faults.ts';
import type { FewestOfDay } from '../../palette/fewer.ts';
import type { Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { putBack } from '../../palette/supply.ts';
import { starterStock } from '../../pigment/starter.ts';
import { isStop } from '../jobs.ts';
import { hrefOf, place, route } from '../route.ts';
import { mixedFrom } from '../shelf/stocked.ts';
import { book, complain, edition, opening, shelf, stocked, tell } from '../studio.ts';
import { leftoverOf, passageOf } from './kept.ts';
import { sayPalette } from './words.ts';

const STARTER = starterStock();

/** Today where the painter is, as an ISO day. */
export function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The day that is being prepared. */
export const date = signal(today());
// The address says which day that is; without one it is today, and a passage belongs to the day at hand.
effect(() => {
  const { place: where, open, within } = route.value;
  if (where !== 'palette') return;
  const named = open === 'sheet' ? within[0] : open;
  if (named === null) date.value = today();
  else if (named !== undefined && isDay(named)) date.value = named;
});
/** The address of the day that is being prepared, and of its sheet. */
export const dayHref = (): string =>
  date.value === today() ? hrefOf('palette') : hrefOf('palette', date.value);
export const sheetHref = (): string => hrefOf('palette', 'sheet', date.value);

interface Kept {
  readonly palettes: readonly Entry<'palette'>[];
  readonly passages: readonly Entry<'passage'>[];
  readonly leftovers: readonly Entry<'leftover'>[];
  readonly sheets: readonly Entry<'sheet'>[];
}
/** What the book holds of all days; null until it was read. */
export const kept = signal<Kept | null>(null);

async function all<K extends Kind>(from: Book, kind: K): Promise<readonly Entry<K>[]> {
  const cards = await from.list(kind);
  if (!cards.ok) {
    complain(bookFaultWords(cards.fault));
    return [];
  }
  const found = await Promise.all(cards.value.map(({ id }) => from.get(kind, id)));
  return found.flatMap((one) => (one.ok && one.value.deletedAt === undefined ? [one.value] : []));
}

async function readAll(from: Book): Promise<void> {
  const [palettes, passages, leftovers, sheets] = await Promise.all([
    all(from, 'palette'),
    all(from, 'passage'),
    all(from, 'leftover'),
    all(from, 'sheet'),
  ]);
  kept.value = {
    palettes: palettes.toSorted((a, b) => (a.created < b.created ? -1 : 1)),
    passages,
    leftovers,
    sheets,
  };
}

/** Reads what the book holds of all days, where that was not read yet. */
export async function wantKept(): Promise<void> {
  const from = await opening;
  if (from && kept.peek() === null) await readAll(from);
}

let reading: Promise<void> = Promise.resolve();
effect(() => {
  edition.value;
  const from = book.value;
  if (from === null || place.value !== 'palette') return;
  reading = reading.then(() => readAll(from));
});

export const studioPalette = computed(
  () => kept.value?.palettes.find(({ id }) => id === STUDIO_PALETTE) ?? null,
);
/** The palettes of the day, the first first. */
export const palettes = computed(() =>
  (kept.value?.palettes ?? []).filter(
    (one) => one.id !== STUDIO_PALETTE && one.body.date === date.value,
  ),
);
export const passage = (id: string): Entry<'passage'> | null =>
  kept.value?.passages.find((one) => one.id === id) ?? null;

/** The sample book lies on this day's palettes: its leftovers are for it alone, and for no other day. */
const isSampleDay = computed(() => palettes.value.some(({ id }) => isSample(id)));
/** What is left from days before and can still be offered. */
export const leftovers = computed(() =>
  (kept.value?.leftovers ?? []).filter(
    ({ id, body }) => body.used === undefined && isSample(id) === isSampleDay.value,
  ),
);
/** The day's sheet: what left the stock for it stands there. */
export const sheet = computed(() => {
  const all = kept.value?.sheets ?? [];
  const ofDay = all.find(({ id }) => id === sheetId(date.value));
  const ofSample = all.find(({ id, body }) => isSample(id) && body.date === date.value);
  return ofDay ?? (isSampleDay.value ? ofSample : null) ?? null;
});
export const sheetId = (day: string) => `sheet-${day}`;

export const rules = computed((): Rules => {
  const own = studioPalette.value?.body;
  if (!own) return RULES;
  const { tooth, waste, heapCm3, ...settled } = own.rules ?? ruled(RULES);
  return {
    ...settled,
    seats: own.seats,
    shape: own.shape === 'oval' ? 'oval' : 'square',
    hand: own.hand,
    allowances: { tooth, waste, heapCm3 },
  };
});

const ruled = ({ allowances, edgeCm3, oil, pupils, people, acknowledged }: Rules): StudioRules => ({
  ...allowances,
  edgeCm3,
  oil,
  pupils,
  people,
  acknowledged,
});

let last: Promise<unknown> = Promise.resolve();
/** One change after the other, so that each builds upon what the one before has kept. */
export function inTurn<T>(change: () => Promise<T>): Promise<T> {
  const mine = last.then(change);
  last = mine.catch(() => {});
  return mine;
}

/** Changes what the studio has settled. */
export const settle = (change: Partial<Rules>) =>
  inTurn(() => {
    const next = { ...rules.value, ...change };
    const over = studioPalette.value;
    return save(
      {
        kind: 'palette',
        id: STUDIO_PALETTE,
        ...(over ? { over } : {}),
        body: {
          name: sayPalette.studioPalette,
          note: over?.body.note ?? '',
          date: over?.body.date ?? today(),
          shape: next.shape === 'oval' ? 'oval' : 'square-cornered',
          hand: next.hand,
          seats: next.seats,
          passages: [],
          piles: [],
          rules: ruled(next),
        },
      },
      null,
    );
  });

/** Writes into the book; says so where there are words, with a way back. */
export async function save<K extends Kind>(
  draft: {
    readonly kind: K;
    readonly body: Bodies[K];
    readonly id?: string;
    readonly over?: Entry<K>;
  },
  said: string | null,
): Promise<Put<K> | null> {
  const into = await opening;
  if (!into) return null;
  const put = await into.put(draft);
  if (!put.ok) {
    complain(bookFaultWords(put.fault));
    return null;
  }
  // Shown at once: the next change must build upon it.
  const { entry } = put.value;
  const slot = SLOTS[draft.kind];
  if (slot && kept.value) {
    const rest = kept.value[slot] as readonly { readonly id: string }[];
    const at = rest.findIndex(({ id }) => id === entry.id);
    const next = at < 0 ? [...rest, entry] : rest.with(at, entry);
    kept.value = { ...kept.value, [slot]: next };
  }
  if (said !== null) tell(said, put.value.undo);
  return put.value;
}
const SLOTS: Partial<Record<Kind, keyof Kept>> = {
  palette: 'palettes',
  passage: 'passages',
  leftover: 'leftovers',
  sheet: 'sheets',
};

export async function remove(id: string, said: string): Promise<void> {
  const removed = await (await opening)?.remove(id);
  if (removed?.ok) tell(said, removed.value.undo);
  else if (removed) complain(bookFaultWords(removed.fault));
}

/** What the day is mixed from. While it is prepared it counts what was taken as still there. */
export const studio = computed((): Studio => {
  const own = stocked.value?.body.stock;
  const stock = own && own.entries.length > 0 ? own : STARTER;
  const taken = sheet.value?.body.taken;
  if (!taken) return { shelf: shelf.value, stock };
  const before = putBack(stock, taken);
  return { shelf: own ? mixedFrom(before) : shelf.value, stock: before };
});
export const isCounted = computed(() => (stocked.value?.body.stock?.entries.length ?? 0) > 0);

const asked = computed((): DayAsked | null =>
  kept.value === null
    ? null
    : {
        date: date.value,
        palettes: palettes.value.map(({ body }) => ({
          name: body.name,
          passages: body.passages.flatMap((id) => {
            const found = passage(id);
            return found ? [passageOf(found)] : [];
          }),
          ...(body.order ? { order: body.order } : {}),
        })),
        rules: rules.value,
        leftovers: leftovers.value.map(leftoverOf),
      },
);

/** The day as it is planned, for whom; null while there is nothing to plan. */
export const plan = signal<{ readonly day: Day; readonly studio: Studio } | null>(null);
export const faults = signal<readonly PaletteFault[]>([]);
export const isPlanning = signal(false);
export const fewest = signal<FewestOfDay | null>(null);
/** Share done of the search for the fewest pigments; null while nobody asked. */
export const seeking = signal<number | null>(null);

const run = (job: PaletteJob, signal: AbortSignal, onNews: (done: number) => void) =>
  runJob<PaletteJob, PaletteAnswer, number>(
    () =>
      new Worker(new URL('../../../workers/palette.worker.ts', import.meta.url), {
        type: 'module',
      }),
    job,
    { signal, onNews },
  );

effect(() => {
  const wanted = asked.value;
  const from = studio.value;
  if (wanted === null || place.value !== 'palette') return;
  const stop = new AbortController();
  batch(() => {
    fewest.value = null;
    seeking.value = null;
  });
  if (wanted.palettes.every(({ passages }) => passages.every(({ piles }) => piles.length === 0))) {
    batch(() => {
      plan.value = null;
      faults.value = [];
      isPlanning.value = false;
    });
    return;
  }
  isPlanning.value = true;
  void run({ studio: from, asked: wanted, fewest: false }, stop.signal, () => {})
    .then(({ day }) =>
      batch(() => {
        plan.value = day.ok ? { day: day.value, studio: from } : null;
        faults.value = day.ok ? [] : day.fault;
        isPlanning.value = false;
      }),
    )
    .catch((error: unknown) => {
      if (isStop(error)) return;
      isPlanning.value = false;
      complain(sayPalette.notPlanned);
    });
  return () => stop.abort();
});

let seek: AbortController | null = null;
/** Looks for the fewest pigments of the day. */
export async function seekFewest(): Promise<void> {
  const wanted = asked.value;
  if (wanted === null) return;
  stopSeeking();
  seek = new AbortController();
  const { signal: stop } = seek;
  seeking.value = 0;
  try {
    const answer = await run(
      { studio: studio.value, asked: wanted, fewest: true },
      stop,
      (done) => {
        seeking.value = done;
      },
    );
    if (answer.fewest?.ok && wanted === asked.value) fewest.value = answer.fewest.value;
    else complain(sayPalette.noFewest);
  } catch (error) {
    if (!isStop(error)) complain(sayPalette.noFewest);
  }
  if (!stop.aborted) seeking.value = null;
}
export function stopSeeking(): void {
  seek?.abort();
  seeking.value = null;
}
