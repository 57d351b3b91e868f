import { computed, signal } from '@preact/signals';
import { isSample, SAMPLE_FILE } from '../../../book/schema/sample-ids.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { book, bookReady, showError, showNotice } from '../../state/studio.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { entrySummaries } from './entry-list.ts';
import { copyImport, importPreviewedCopy, previewCopyFile } from './import-copy.ts';

/** Number of entries of the sample book in the book; undefined until the list is read. */
export const samplesThere = computed(
  () => entrySummaries.value?.filter(({ id }) => isSample(id)).length,
);

/** True while the running import is that of the sample book. */
export const isBringingSample = signal(false);

/**
 * Imports the sample book like any other copy.
 * @returns true once it is in the book
 */
export async function importSampleBook(): Promise<boolean> {
  isBringingSample.value = true;
  try {
    return await broughtIn();
  } finally {
    isBringingSample.value = false;
  }
}

async function broughtIn(): Promise<boolean> {
  const here = await bookReady;
  if (!here || here.readOnly || copyImport.peek()) return false;
  const answer = await fetch(`/samples/${SAMPLE_FILE}`).catch(() => null);
  if (!answer?.ok) {
    showError(bookTexts.sampleMissing);
    return false;
  }
  const file = await answer.blob();
  // Without this the entries deleted earlier would stay deleted: a merge does not restore them.
  const { deleteSampleTombstones } = await import('../../../book/transfer/sample-book.ts');
  const forgotten = await deleteSampleTombstones(here);
  if (!forgotten.ok) {
    showError(bookFaultWords(forgotten.fault));
    return false;
  }
  await previewCopyFile(file);
  return importPreviewedCopy();
}

/** Moves the sample book to the bin, with undo. */
export async function removeSampleBook(): Promise<void> {
  const here = book.value;
  if (!here) return;
  const { binSampleBook } = await import('../../../book/transfer/sample-book.ts');
  const thrown = await binSampleBook(here);
  if (!thrown.ok) return showError(bookFaultWords(thrown.fault));
  const { away, stay, undo } = thrown.value;
  if (away === 0) showNotice(bookTexts.sampleInUse);
  else showNotice(stay === 0 ? bookTexts.sampleAway : bookTexts.sampleAwayBut(stay), undo);
}
