import { computed, signal } from '@preact/signals';
import { bodyOfStock } from '../../../book/schema/shelf.ts';
import {
  acceptCalibration,
  type FittedCurves,
  fittedPaintsOf,
  removeCalibration,
} from '../../../calibration/accept-calibration.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { stockFaultWords } from '../../../messages/stock-faults.ts';
import type { Surface } from '../../../optics/surface.ts';
import {
  addEntry,
  duplicateEntry,
  editEntry,
  removeEntry,
  type StockResult,
  saveOwnPigment,
  setSpecular,
} from '../../../pigment/edit-stock.ts';
import { markWhite } from '../../../pigment/mark-white.ts';
import { pigmentOf } from '../../../pigment/pigment-facts.ts';
import { starterStock } from '../../../pigment/starter-shelf.ts';
import type { OwnPigment, Stock, StockDraft } from '../../../pigment/stock.ts';
import { labelOf } from '../../../pigment/stock-label.ts';
import type { StockFault } from '../../../pigment/validate-stock.ts';
import { fail, ok, type Result } from '../../../result.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { newId } from '../../state/new-id.ts';
import { shelfRemark } from '../../state/shelf-labels.ts';
import { bookReady, showError, showNotice, storedShelf } from '../../state/studio.ts';
import { EMPTY, SHELF_ID } from '../../state/studio-shelf.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { type Order, shelfLines } from './shelf-search.ts';

const STARTER = starterStock();

/** The studio's own stock; empty until a paint is added. */
export const ownStock = computed<Stock>(() => storedShelf.value?.body.stock ?? EMPTY);
/** False while the studio's own shelf is empty; the starter shelf is shown instead. */
export const isStocked = computed(() => ownStock.value.entries.length > 0);
export const shownStock = computed<Stock>(() =>
  isStocked.value ? ownStock.value : { ...STARTER, surface: ownStock.value.surface },
);

export const shelfQuery = signal('');
export const order = signal<Order>('light');
export const lines = computed(() => shelfLines(shownStock.value, shelfQuery.value, order.value));

/** Outcome of a change: the new stock, or the faults. */
type Changed = Result<Stock, readonly StockFault[]>;
let last: Promise<unknown> = Promise.resolve();

/**
 * Applies a change to the stock and saves it in the book; changes run one after the other.
 * @param how  computes the new stock
 * @param said the sentence of the notice, which also offers undo
 */
function change(
  how: (stock: Stock) => StockResult,
  said: (after: Stock, before: Stock) => string,
): Promise<Changed> {
  const mine = last.then(async (): Promise<Changed> => {
    const book = await bookReady;
    const over = storedShelf.value;
    const before = over?.body.stock ?? EMPTY;
    const after = how(before);
    if (!after.ok || !book) return after.ok ? fail([]) : after;
    const put = await book.put({
      kind: 'shelf',
      id: SHELF_ID,
      body: bodyOfStock(after.value, shelfRemark, over?.body.note),
      ...(over ? { over } : {}),
    });
    if (!put.ok) {
      showError(bookFaultWords(put.fault));
      return fail([]);
    }
    storedShelf.value = put.value.entry;
    showNotice(said(after.value, before), put.value.undo);
    return after;
  });
  last = mine.catch(() => {});
  return mine;
}

/** Label of an entry; '' when it no longer exists. */
const called = (stock: Stock, id: string): string => {
  const entry = stock.entries.find((each) => each.id === id);
  return entry ? labelOf(stock, entry) : '';
};

/** Shows the first fault as an error notice, for actions without a form. */
function complainOf(changed: Changed): void {
  const fault = changed.ok ? undefined : changed.fault[0];
  if (fault) showError(stockFaultWords(fault, formatNumber));
}

/** A paint as entered in the form, with the custom pigment that it needs, if any. */
export interface PaintFormValues {
  readonly draft: StockDraft;
  readonly own: OwnPigment | null;
}

/** Adds a paint to the shelf. The first white becomes the studio's white. */
export async function add({ draft, own }: PaintFormValues, id: string): Promise<Changed> {
  let white = false;
  return change(
    (stock) => {
      const kept = own === null ? ok(stock) : saveOwnPigment(stock, own);
      const added = kept.ok ? addEntry(kept.value, draft, id) : kept;
      if (!added.ok || added.value.white !== null) return added;
      const family = own?.family ?? pigmentOf(draft.pigment)?.family;
      const marked = family === 'white' ? markWhite(added.value, id) : added;
      white = marked.ok && marked.value.white === id;
      return marked.ok ? marked : added;
    },
    (stock) => (white ? shelfTexts.addedWhite : shelfTexts.added)(called(stock, id)),
  );
}

export async function edit(id: string, { draft, own }: PaintFormValues): Promise<Changed> {
  return change(
    (stock) => {
      const kept = own === null ? ok(stock) : saveOwnPigment(stock, own);
      return kept.ok ? editEntry(kept.value, id, draft) : kept;
    },
    (stock) => shelfTexts.changed(called(stock, id)),
  );
}

/**
 * Removes a paint from the shelf.
 * @returns true on success
 */
export async function remove(id: string): Promise<boolean> {
  const removed = await change(
    (stock) => removeEntry(stock, id),
    (_, before) => shelfTexts.removed(called(before, id)),
  );
  complainOf(removed);
  return removed.ok;
}

/**
 * Adds a copy of a paint to the shelf.
 * @returns the id of the copy; null on failure
 */
export async function duplicate(id: string): Promise<string | null> {
  const copy = newId();
  const changed = await change(
    (stock) => duplicateEntry(stock, id, copy),
    (stock) => shelfTexts.added(called(stock, copy)),
  );
  complainOf(changed);
  return changed.ok ? copy : null;
}

export async function mark(id: string | null): Promise<void> {
  complainOf(
    await change(
      (stock) => markWhite(stock, id),
      (stock) => (id === null ? shelfTexts.unmarked : shelfTexts.marked(called(stock, id))),
    ),
  );
}

/**
 * Applies fitted curves to the shelf's paints.
 * @param date ISO date of the fit
 */
export async function acceptFit(fitted: FittedCurves, date: string): Promise<Changed> {
  const changed = await change(
    (stock) => {
      const accepted = acceptCalibration(stock, fitted, date);
      return accepted.ok ? accepted : fail([{ code: 'stock-gone', field: null }]);
    },
    () => calibrationTexts.accepted(fittedPaintsOf(fitted).length),
  );
  complainOf(changed);
  return changed;
}

/** Removes an entry's own curve, so that its pigment's curve applies again. */
export async function putHandbookBack(id: string): Promise<void> {
  complainOf(
    await change(
      (stock) => ok(removeCalibration(stock, [id])),
      (stock) => calibrationTexts.backTo(called(stock, id)),
    ),
  );
}

/**
 * Sets whether paint is viewed with specular reflection; targets, drawings and differences follow.
 */
export async function setGlareView(specular: Surface['specular']): Promise<void> {
  if (specular === ownStock.value.surface.specular) return;
  complainOf(
    await change(
      (stock) => ok(setSpecular(stock, specular)),
      () => shelfTexts.seenAs[specular].said,
    ),
  );
}

/** Copies the whole starter shelf to the studio's own shelf, for editing. */
export async function takeStarter(): Promise<void> {
  complainOf(
    await change(
      (stock) => ok({ ...stock, entries: STARTER.entries, white: STARTER.white }),
      () => shelfTexts.tookStarter,
    ),
  );
}
