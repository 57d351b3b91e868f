import { computed, effect, signal } from '@preact/signals';
import type { BookFault } from '../../book/schema/book-fault.ts';
import type { Entry } from '../../book/schema/record.ts';
import { onHide } from '../../book/store/draft-autosave.ts';
import type { Book, Undo } from '../../book/store/open-book.ts';
import type { SaveState } from '../../book/store/save-state.ts';
import { bookFaultWords } from '../../messages/book-faults.ts';
import { sharedTexts } from '../texts/shared-texts.ts';
import { watchKeeping } from './storage-promise.ts';
import { mixingShelfOf, readStoredShelf } from './studio-shelf.ts';

/** The open book; null while opening, and when it cannot be opened. */
export const book = signal<Book | null>(null);
export const saveState = signal<SaveState>({ state: 'saved' });
/**
 * Why this window cannot write: the book did not open, is read-only, or was taken over by another
 * window; otherwise null.
 */
export const bookFault = signal<BookFault | null>(null);
const unsaved = signal<readonly (() => boolean)[]>([]);
/** Whether any screen has a change that is not in the book yet. */
export const isUnsaved = computed(() => unsaved.value.some((has) => has()));
/** Registers a predicate that reports a screen's unsaved changes. */
export const registerUnsaved = (has: () => boolean): void => {
  unsaved.value = [...unsaved.peek(), has];
};
/** Increases with every change of the book, in this window or another. */
export const bookRevision = signal(0);
/** The studio's shelf as stored in the book; null while it is empty. */
export const storedShelf = signal<Entry<'shelf'> | null>(null);
/**
 * The shelf for the mixture search: the stored shelf, or the starter shelf while that has nothing
 * to mix.
 */
export const shelf = computed(() => mixingShelfOf(storedShelf.value?.body.stock ?? null));

/** A notice about something that just happened, with undo where possible. */
interface Notice {
  readonly text: string;
  readonly undo?: Undo;
  readonly bad?: boolean;
}
export const notice = signal<Notice | null>(null);

/** Shows a notice, with undo where possible. */
export const showNotice = (text: string, undo?: Undo): void => {
  toldAt = performance.now();
  notice.value = undo ? { text, undo } : { text };
};
let toldAt = 0;
/** Milliseconds to read a notice and to use its undo. */
const READ_MS = 8000;
/** Dismisses a notice on navigation when it was visible long enough; errors stay. */
export function dismissReadNotice(): void {
  const shown = notice.peek();
  if (shown && !shown.bad && performance.now() - toldAt > READ_MS) notice.value = null;
}

const unsettled = new Set<() => Promise<unknown>>();
/** Registers what a screen must write before the page reloads. */
export const writeBeforeLeaving = (write: () => Promise<unknown>): void => {
  unsettled.add(write);
};
/** Resolves when all pending changes are in the book, or have reported a fault. */
export async function flushAll(): Promise<void> {
  await Promise.all([book.peek()?.flush(), ...[...unsettled].map((write) => write())]);
}
/** Shows an error notice, which stays until it is closed. */
export const showError = (text: string): void => {
  notice.value = { text, bad: true };
};

/** Undoes what the current notice is about. */
export async function undoNotice(): Promise<void> {
  const undo = notice.value?.undo;
  if (!undo) return;
  notice.value = null;
  const undone = await undo();
  if (undone.ok) showNotice(sharedTexts.undone);
  else showError(bookFaultWords(undone.fault));
}

/**
 * Resolves to the book once it is open; to null, after an error notice, when it cannot be opened.
 */
export const bookReady: Promise<Book | null> = openIt();

/** The book's code is loaded after that of the first screen. */
async function openIt(): Promise<Book | null> {
  const { openBook } = await import('../../book/store/open-book.ts');
  const opened = await openBook({ notice: onBookFault });
  // The window that blocked the upgrade has been closed.
  if (notice.peek()?.text === bookFaultWords({ code: 'older-window' })) notice.value = null;
  if (!opened.ok) {
    bookFault.value = opened.fault;
    showError(bookFaultWords(opened.fault));
    return null;
  }
  const { value } = opened;
  value.saving.subscribe((state) => {
    saveState.value = state;
  });
  // Before any screen requests a mixture.
  await readStocked(value);
  value.onChange(() => {
    bookRevision.value++;
    void readStocked(value);
  });
  onHide(window, () => {
    leaveField();
    void value.flush().then(() => value.clearLogMark());
    void journalWhileClosing(value);
  });
  watchKeeping(value);
  if (value.readOnly) bookFault.value = value.readOnly;
  book.value = value;
  return value;
}

/** Commits the focused text field: fires the change event that leaving it would fire. */
function leaveField(): void {
  const field = document.activeElement;
  const isText =
    field instanceof HTMLTextAreaElement ||
    (field instanceof HTMLInputElement && ['text', 'number'].includes(field.type));
  if (isText && field.value !== field.defaultValue)
    field.dispatchEvent(new Event('change', { bubbles: true }));
}

/** Number of microtask turns, enough for a field's change handler to reach the book. */
const TURNS = 40;

/**
 * Writes the journal of pending changes, again after the change handlers have run. Microtasks still
 * run while a page closes; timers and storage requests do not.
 */
async function journalWhileClosing(book: Book): Promise<void> {
  book.journalPendingWrites();
  for (let turn = 0; turn < TURNS; turn++) await null;
  book.journalPendingWrites();
}

/** Handles faults that arise outside a call: a blocked upgrade, another window that took over. */
function onBookFault(fault: BookFault): void {
  if (fault.code !== 'older-window' && fault.code !== 'book-lost') bookFault.value = fault;
  showError(bookFaultWords(fault));
}

async function readStocked(book: Book): Promise<void> {
  const found = await readStoredShelf(book);
  if (!found.ok) showError(bookFaultWords(found.fault));
  else if (found.value?.clock !== storedShelf.peek()?.clock) storedShelf.value = found.value;
}

// A plain notice disappears by itself; one with undo or an error stays.
effect(() => {
  const shown = notice.value;
  if (!shown || shown.undo || shown.bad) return;
  const timer = setTimeout(() => {
    if (notice.peek() === shown) notice.value = null;
  }, 6000);
  return () => clearTimeout(timer);
});
