import { computed, effect, signal } from '@preact/signals';
import { onHide } from '../book/drafts.ts';
import { type BookFault, bookFaultWords } from '../book/faults.ts';
import type { Entry } from '../book/record.ts';
import type { SaveState } from '../book/saving.ts';
import type { Book, Undo } from '../book/store.ts';
import { watchKeeping } from './book/keeping.ts';
import { mixedFrom, shelfIn } from './shelf/stocked.ts';
import { say } from './words/frame.ts';

/** The open book; null until it is open, or where it cannot be. */
export const book = signal<Book | null>(null);
export const saveState = signal<SaveState>({ state: 'saved' });
/** Why this window writes nothing: the book did not open, is read only, or was taken over; else null. */
export const bookFault = signal<BookFault | null>(null);
const unsaved = signal<readonly (() => boolean)[]>([]);
/** Whether a screen holds something that the book does not have yet. */
export const isUnsaved = computed(() => unsaved.value.some((has) => has()));
/** A screen says how to tell whether it holds something. */
export const watchUnsaved = (has: () => boolean): void => {
  unsaved.value = [...unsaved.peek(), has];
};
/** Rises whenever something in the book changed, here or in another window. */
export const edition = signal(0);
/** The studio's shelf as the book has it; null until something is stocked. */
export const stocked = signal<Entry<'shelf'> | null>(null);
/** What mixtures are sought on: the stocked shelf, or the starter shelf while that has nothing to mix. */
export const shelf = computed(() => mixedFrom(stocked.value?.body.stock ?? null));

/** What has just happened, with a way back where there is one. */
export interface Notice {
  readonly text: string;
  readonly undo?: Undo;
  readonly bad?: boolean;
}
export const notice = signal<Notice | null>(null);

export const tell = (text: string, undo?: Undo): void => {
  toldAt = performance.now();
  notice.value = undo ? { text, undo } : { text };
};
let toldAt = 0;
/** Long enough to read a notice, and to take back what it was about. */
const READ_MS = 8000;
/** On another page a notice that was read no longer stands in the way. */
export function turnPage(): void {
  const shown = notice.peek();
  if (shown && !shown.bad && performance.now() - toldAt > READ_MS) notice.value = null;
}

const unsettled = new Set<() => Promise<unknown>>();
/** Names what a screen must write before its page may go. */
export const writeBeforeLeaving = (write: () => Promise<unknown>): void => {
  unsettled.add(write);
};
/** Everything that waits to be written is in the book, or has said why it is not. */
export async function settled(): Promise<void> {
  await Promise.all([book.peek()?.flush(), ...[...unsettled].map((write) => write())]);
}
export const complain = (text: string): void => {
  notice.value = { text, bad: true };
};

/** Takes back what the last notice was about. */
export async function undoNotice(): Promise<void> {
  const undo = notice.value?.undo;
  if (!undo) return;
  notice.value = null;
  const undone = await undo();
  if (undone.ok) tell(say.undone);
  else complain(bookFaultWords(undone.fault));
}

/** The book once it is open; null where it cannot be opened, which the painter has then been told. */
export const opening: Promise<Book | null> = openIt();

/** The book's own code comes after the first screen's. */
async function openIt(): Promise<Book | null> {
  const { openBook } = await import('../book/store.ts');
  const opened = await openBook({ notice: hear });
  // A window that was in the way has been closed.
  if (notice.peek()?.text === bookFaultWords({ code: 'older-window' })) notice.value = null;
  if (!opened.ok) {
    bookFault.value = opened.fault;
    complain(bookFaultWords(opened.fault));
    return null;
  }
  const { value } = opened;
  value.saving.subscribe((state) => {
    saveState.value = state;
  });
  // Before any screen asks for a mixture.
  await readStocked(value);
  value.onChange(() => {
    edition.value++;
    void readStocked(value);
  });
  onHide(window, () => {
    leaveField();
    void value.flush().then(() => value.putAway());
    void noteAll(value);
  });
  watchKeeping(value);
  if (value.readOnly) bookFault.value = value.readOnly;
  book.value = value;
  return value;
}

/** A field whose text is kept when it is left is left now. */
function leaveField(): void {
  const field = document.activeElement;
  const isText =
    field instanceof HTMLTextAreaElement ||
    (field instanceof HTMLInputElement && ['text', 'number'].includes(field.type));
  if (isText && field.value !== field.defaultValue)
    field.dispatchEvent(new Event('change', { bubbles: true }));
}

/** Enough for what a field sets off to reach the book. */
const TURNS = 40;

/** Promises still run while a page closes, timers and disks do not. */
async function noteAll(book: Book): Promise<void> {
  book.note();
  for (let turn = 0; turn < TURNS; turn++) await null;
  book.note();
}

/** What happens to the book outside a call: an upgrade that waits, another window that took over. */
function hear(fault: BookFault): void {
  if (fault.code !== 'older-window' && fault.code !== 'book-lost') bookFault.value = fault;
  complain(bookFaultWords(fault));
}

async function readStocked(book: Book): Promise<void> {
  const found = await shelfIn(book);
  if (!found.ok) complain(bookFaultWords(found.fault));
  else if (found.value?.clock !== stocked.peek()?.clock) stocked.value = found.value;
}

// A plain notice goes by itself; one that can be undone or that tells of trouble waits to be read.
effect(() => {
  const shown = notice.value;
  if (!shown || shown.undo || shown.bad) return;
  const timer = setTimeout(() => {
    if (notice.peek() === shown) notice.value = null;
  }, 6000);
  return () => clearTimeout(timer);
});
