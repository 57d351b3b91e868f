import { effect, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { DraperyBody } from '../../../book/schema/drapery.ts';
import type { Entry } from '../../../book/schema/record.ts';
import { DRAPERY_WAYS } from '../../../drapery/cloth-types.ts';
import { FABRICS } from '../../../drapery/fabric.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { ok } from '../../../result.ts';
import { joinWords } from '../../../wording.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { autosave } from '../autosave.ts';
import { clearDraft, readDraft, saveDraftOnHide } from '../draft-storage.ts';
import { today } from '../locale-format.ts';
import { replaceAddress, route } from '../route.ts';
import { book, bookReady, showError, showNotice, writeBeforeLeaving } from '../studio.ts';
import { garments } from './cloth-results.ts';
import { hasAllRequests, recordsOf, schemeFromRecord } from './drapery-records.ts';
import {
  EMPTY_SCHEME,
  loadScheme,
  type Scheme,
  type SchemeGarment,
  scheme,
} from './drapery-scheme.ts';

/** The saved drapery that is open; null until it is saved. */
export const savedDrapery = signal<Entry<'drapery'> | null>(null);
/** The scheme in the book, as canonical JSON; empty if none is. */
const savedSchemeJson = signal('');
/** State of loading the drapery named by the route. */
export const draperyStage = signal<'opening' | 'open' | 'missing'>('open');

export const isDraperySaved = (): boolean =>
  savedDrapery.value !== null && savedSchemeJson.value === canonical(scheme.value);

/** The drapery's name; without one, the names of its garments. */
export const currentDraperyName = (): string =>
  scheme.value.name.trim() ||
  joinWords(scheme.value.garments.map(({ wish }) => wish.name)) ||
  draperyTexts.unnamed;

/**
 * Saves the drapery to the book; updates its entry if it has one. Does nothing until every garment
 * is computed.
 */
export async function saveDrapery(): Promise<void> {
  const here = book.value;
  const whole = garments.value.filter((one) => one !== null);
  if (!here || whole.length < scheme.value.garments.length) return;
  const now = scheme.value;
  const body: DraperyBody = {
    name: currentDraperyName(),
    note: savedDrapery.value?.body.note ?? '',
    date: savedDrapery.value?.body.date ?? today(),
    harmony: now.harmony,
    garments: whole.flatMap((garment, i) => recordsOf(garment, now.garments[i]!)),
  };
  const before = savedDrapery.value;
  const put = await here.put({
    kind: 'drapery',
    body,
    ...(before ? { id: before.id, over: before } : {}),
  });
  if (!put.ok) return showError(bookFaultWords(put.fault));
  const { entry } = put.value;
  const named = { ...now, name: body.name };
  savedDrapery.value = entry;
  if (scheme.value === now) scheme.value = named;
  savedSchemeJson.value = canonical(named);
  openId = entry.id;
  if (route.peek().place === 'drapery') replaceAddress('drapery', entry.id);
  showNotice(draperyTexts.keptNow(body.name), put.value.undo);
}

/** Key under which older versions of the app stored the requests of a drapery on this device. */
const rememberedKey = (id: string): string => `drapery ${id}`;
const DRAFT = 'drapery';

/** Parses a stored scheme; null unless it has the form of one. */
function parseScheme(text: string | null): Scheme | null {
  if (text === null) return null;
  try {
    const read = JSON.parse(text) as Partial<Scheme> | null;
    const isWorn = ({ wish, share }: SchemeGarment) =>
      typeof share === 'number' &&
      typeof wish?.name === 'string' &&
      wish.lab?.length === 3 &&
      DRAPERY_WAYS.includes(wish.way) &&
      FABRICS.includes(wish.stuff);
    return typeof read?.name === 'string' && read.garments?.every(isWorn)
      ? { name: read.name, harmony: read.harmony ?? null, garments: read.garments }
      : null;
  } catch {
    return null;
  }
}

/** Id of the drapery that is open or loading; null if none is. */
let openId: string | null = null;

/** Loads a drapery from the book and shows it, with unsaved changes of the last visit. */
async function open(id: string): Promise<void> {
  const here = await bookReady;
  if (!here) return;
  draperyStage.value = 'opening';
  const entry = await here.get('drapery', id);
  const remembered = await here.recall(rememberedKey(id));
  if (openId !== id) return;
  if (!entry.ok) {
    draperyStage.value = 'missing';
    savedDrapery.value = null;
    return;
  }
  const own = parseScheme(remembered.ok ? remembered.value : null);
  const { body } = entry.value;
  // A complete record wins over this device's memory: another device may have changed it since.
  loadScheme(own && !hasAllRequests(body) ? { ...own, name: body.name } : schemeFromRecord(body));
  savedDrapery.value = entry.value;
  savedSchemeJson.value = canonical(scheme.value);
  const changed = unsavedChanges(id);
  if (changed) loadScheme(changed);
  draperyStage.value = 'open';
}

/** Closes the open drapery and shows another scheme. */
export function replaceDrapery(next: Scheme = EMPTY_SCHEME): void {
  const before = { scheme: scheme.value, kept: savedDrapery.value, inBook: savedSchemeJson.value };
  // Unsaved work is discarded only with an undo.
  if (before.scheme.garments.length > 0 && !isDraperySaved())
    showNotice(draperyTexts.putAside(currentDraperyName()), async () => {
      loadScheme(before.scheme);
      savedDrapery.value = before.kept;
      savedSchemeJson.value = before.inBook;
      return ok(null);
    });
  savedDrapery.value = null;
  savedSchemeJson.value = '';
  draperyStage.value = 'open';
  openId = null;
  loadScheme(next);
}

// The route names the open drapery; without an id, the current draft stays.
effect(() => {
  const { place, open: id } = route.value;
  if (place !== 'drapery' || id === null || id === openId) return;
  openId = id;
  void open(id);
});

// Keep the draft across page loads, saved to the book or not.
const draftAtLoad = readDraft(DRAFT);
let isRecalled = false;
void bookReady.then(async (here) => {
  const draft = here && (await here.recall(DRAFT));
  const last = parseScheme(draftAtLoad) ?? (draft?.ok ? parseScheme(draft.value) : null);
  isRecalled = true;
  if (last && scheme.peek() === EMPTY_SCHEME && route.peek().open === null) loadScheme(last);
});
const saveDraft = async (): Promise<void> => {
  draftAutosave.cancel();
  if (!isRecalled) return;
  await book.peek()?.remember(DRAFT, JSON.stringify(scheme.peek()));
  // The book's copy is the newest from now on, until the page hides again.
  clearDraft(DRAFT);
};
const draftAutosave = autosave(300, saveDraft);
effect(() => {
  scheme.value;
  if (book.value) draftAutosave.schedule();
});
writeBeforeLeaving(saveDraft);
saveDraftOnHide(DRAFT, () =>
  isRecalled
    ? { ...scheme.peek(), of: isDraperySaved() ? null : (savedDrapery.peek()?.id ?? null) }
    : undefined,
);

/** Changes to this drapery that were unsaved when the page closed; null if there are none. */
function unsavedChanges(id: string): Scheme | null {
  const bench = parseScheme(draftAtLoad);
  return bench && JSON.parse(draftAtLoad!).of === id ? bench : null;
}
