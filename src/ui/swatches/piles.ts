import { signal } from '@preact/signals';
import { bookFaultWords } from '../../book/faults.ts';
import type { Part } from '../../pigment/calibrate/swatches.ts';
import { ownStock } from '../shelf/state.ts';
import { complain, opening, tell } from '../studio.ts';
import { saySwatches, today } from '../words/swatches.ts';
import { type CameOut, foreseenOf, pileBodyOf } from './pile.ts';

/** Parts of the pile that is being logged, by ids of entries on the shelf. */
export const parts = signal<readonly Part[]>([]);
export const cameOut = signal<CameOut | null>(null);

/** Starts logging a pile from another screen, by ids of entries on the shelf. */
export function handOver(mixed: readonly Part[], seen: CameOut | null): void {
  parts.value = mixed;
  cameOut.value = seen;
}

/**
 * Saves the pile that is being logged.
 * @returns the reason of a failure as a sentence; '' on success, ' ' when an error notice already
 *   shows it
 */
export async function keepPile(note: string): Promise<string> {
  const seen = cameOut.peek();
  const stock = ownStock.peek();
  if (foreseenOf(parts.peek(), stock) === null) return saySwatches.pileWanting;
  if (seen === null) return saySwatches.pileUnseen;
  const body = pileBodyOf(parts.peek(), seen, stock, { date: today(), note: note.trim() })!;
  const book = await opening;
  const put = await book?.put({ kind: 'pile', body });
  if (!put?.ok) {
    if (put) complain(bookFaultWords(put.fault));
    return ' ';
  }
  handOver([], null);
  tell(saySwatches.pileKept, put.value.undo);
  return '';
}
