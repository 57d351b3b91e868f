import { signal } from '@preact/signals';
import type { Part } from '../../../calibration/painted-swatch.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { bookReady, showError, showNotice } from '../../state/studio.ts';
import { calibrationTexts, today } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { type ObservedPile, pileBodyOf, predictPile } from './pile-prediction.ts';

/** Parts of the pile that is being logged, by ids of entries on the shelf. */
export const loggedParts = signal<readonly Part[]>([]);
export const observedPile = signal<ObservedPile | null>(null);

/** Starts logging a pile from another screen, by ids of entries on the shelf. */
export function startPileLog(mixed: readonly Part[], seen: ObservedPile | null): void {
  loggedParts.value = mixed;
  observedPile.value = seen;
}

/**
 * Saves the pile that is being logged.
 * @returns the reason of a failure as a sentence; '' on success, ' ' when an error notice already
 *   shows it
 */
export async function keepPile(note: string): Promise<string> {
  const seen = observedPile.peek();
  const stock = ownStock.peek();
  if (predictPile(loggedParts.peek(), stock) === null) return calibrationTexts.pileWanting;
  if (seen === null) return calibrationTexts.pileUnseen;
  const body = pileBodyOf(loggedParts.peek(), seen, stock, { date: today(), note: note.trim() })!;
  const book = await bookReady;
  const put = await book?.put({ kind: 'pile', body });
  if (!put?.ok) {
    if (put) showError(bookFaultWords(put.fault));
    return ' ';
  }
  startPileLog([], null);
  showNotice(calibrationTexts.pileKept, put.value.undo);
  return '';
}
