import { effect, signal } from '@preact/signals';
import { canonical } from '../../book/digest.ts';
import type { DraperyBody } from '../../book/drapery.ts';
import { bookFaultWords } from '../../book/faults.ts';
import type { Entry } from '../../book/record.ts';
import { DRAPERY_WAYS } from '../../drapery/fold.ts';
import { STUFFS } from '../../drapery/stuff.ts';
import { ok } from '../../result.ts';
import { joinWords } from '../../wording.ts';
import { benchOf, clearBench, keepBench } from '../bench.ts';
import { today } from '../locale.ts';
import { rename, route } from '../route.ts';
import { autosave } from '../state/autosave.ts';
import { book, complain, opening, tell, writeBeforeLeaving } from '../studio.ts';
import { say } from '../words/drapery.ts';
import { garments } from './cloths.ts';
import { isTold, recordsOf, schemeIn } from './record.ts';
import { EMPTY, type Scheme, scheme, show, type Worn } from './state.ts';

/** The saved drapery that is open; null until it is saved. */
export const kept = signal<Entry<'drapery'> | null>(null);
/** The scheme in the book, as canonical JSON; empty if none is. */
const keptScheme = signal('');
/** State of loading the drapery named by the route. */
export const stage = signal<'opening' | 'open' | 'missing'>('open');

export const isSaved = (): boolean =>
  kept.value !== null && keptScheme.value === canonical(scheme.value);

/** The drapery's name; without one, the names of its garments. */
export const calledNow = (): string =>
  scheme.value.name.trim() ||
  joinWords(scheme.value.garments.map(({ wish }) => wish.name)) ||
  say.unnamed;

/**
 * Saves the drapery to the book; updates its entry if it has one. Does nothing until every garment
 * is computed.
 */
export async function keep(): Promise<void> {
  const here = book.value;
  const whole = garments.value.filter((one) => one !== null);
  if (!here || whole.length < scheme.value.garments.length) return;
  const now = scheme.value;
  const body: DraperyBody = {
    name: calledNow(),
    note: kept.value?.body.note ?? '',
    date: kept.value?.body.date ?? today(),
    harmony: now.harmony,
    garments: whole.flatMap((garment, i) => recordsOf(garment, now.garments[i]!)),
  };
  const before = kept.value;
  const put = await here.put({
    kind: 'drapery',
    body,
    ...(before ? { id: before.id, over: before } : {}),
  });
  if (!put.ok) return complain(bookFaultWords(put.fault));
  const { entry } = put.value;
  const named = { ...now, name: body.name };
  kept.value = entry;
  if (scheme.value === now) scheme.value = named;
  keptScheme.value = canonical(named);
  shown = entry.id;
  if (route.peek().place === 'drapery') rename('drapery', entry.id);
  tell(say.keptNow(body.name), put.value.undo);
}

/** Key under which older versions of the app stored the requests of a drapery on this device. */
const memory = (id: string): string => `drapery ${id}`;
const DRAFT = 'drapery';

/** Parses a stored scheme; null unless it has the form of one. */
function readScheme(text: string | null): Scheme | null {
  if (text === null) return null;
  try {
    const read = JSON.parse(text) as Partial<Scheme> | null;
    const isWorn = ({ wish, share }: Worn) =>
      typeof share === 'number' &&
      typeof wish?.name === 'string' &&
      wish.lab?.length === 3 &&
      DRAPERY_WAYS.includes(wish.way) &&
      STUFFS.includes(wish.stuff);
    return typeof read?.name === 'string' && read.garments?.every(isWorn)
      ? { name: read.name, harmony: read.harmony ?? null, garments: read.garments }
      : null;
  } catch {
    return null;
  }
}

/** Id of the drapery that is open or loading; null if none is. */
let shown: string | null = null;

/** Loads a drapery from the book and shows it, with unsaved changes of the last visit. */
async function open(id: string): Promise<void> {
  const here = await opening;
  if (!here) return;
  stage.value = 'opening';
  const entry = await here.get('drapery', id);
  const remembered = await here.recall(memory(id));
  if (shown !== id) return;
  if (!entry.ok) {
    stage.value = 'missing';
    kept.value = null;
    return;
  }
  const own = readScheme(remembered.ok ? remembered.value : null);
  const { body } = entry.value;
  // A complete record wins over this device's memory: another device may have changed it since.
  show(own && !isTold(body) ? { ...own, name: body.name } : schemeIn(body));
  kept.value = entry.value;
  keptScheme.value = canonical(scheme.value);
  const changed = unkept(id);
  if (changed) show(changed);
  stage.value = 'open';
}

/** Closes the open drapery and shows another scheme. */
export function begin(next: Scheme = EMPTY): void {
  const before = { scheme: scheme.value, kept: kept.value, inBook: keptScheme.value };
  // Unsaved work is discarded only with an undo.
  if (before.scheme.garments.length > 0 && !isSaved())
    tell(say.putAside(calledNow()), async () => {
      show(before.scheme);
      kept.value = before.kept;
      keptScheme.value = before.inBook;
      return ok(null);
    });
  kept.value = null;
  keptScheme.value = '';
  stage.value = 'open';
  shown = null;
  show(next);
}

// The route names the open drapery; without an id, the current draft stays.
effect(() => {
  const { place, open: id } = route.value;
  if (place !== 'drapery' || id === null || id === shown) return;
  shown = id;
  void open(id);
});

// Keep the draft across page loads, saved to the book or not.
const left = benchOf(DRAFT);
let isRecalled = false;
void opening.then(async (here) => {
  const draft = here && (await here.recall(DRAFT));
  const last = readScheme(left) ?? (draft?.ok ? readScheme(draft.value) : null);
  isRecalled = true;
  if (last && scheme.peek() === EMPTY && route.peek().open === null) show(last);
});
const remember = async (): Promise<void> => {
  remembering.cancel();
  if (!isRecalled) return;
  await book.peek()?.remember(DRAFT, JSON.stringify(scheme.peek()));
  // The book's copy is the newest from now on, until the page hides again.
  clearBench(DRAFT);
};
const remembering = autosave(300, remember);
effect(() => {
  scheme.value;
  if (book.value) remembering.schedule();
});
writeBeforeLeaving(remember);
keepBench(DRAFT, () =>
  isRecalled ? { ...scheme.peek(), of: isSaved() ? null : (kept.peek()?.id ?? null) } : undefined,
);

/** Changes to this drapery that were unsaved when the page closed; null if there are none. */
function unkept(id: string): Scheme | null {
  const bench = readScheme(left);
  return bench && JSON.parse(left!).of === id ? bench : null;
}
