import { computed, signal } from '@preact/signals';
import { bookFaultWords } from '../../book/faults.ts';
import { isSample, SAMPLE_FILE } from '../../book/sampled.ts';
import { book, complain, opening, tell } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { bringIn, bringing, lookAt } from './bringing.ts';
import { cards } from './state.ts';

/** Number of entries of the sample book in the book; undefined until the list is read. */
export const samplesThere = computed(() => cards.value?.filter(({ id }) => isSample(id)).length);

/** True while the running import is that of the sample book. */
export const isBringingSample = signal(false);

/**
 * Imports the sample book like any other copy.
 * @returns true once it is in the book
 */
export async function bringSample(): Promise<boolean> {
  isBringingSample.value = true;
  try {
    return await broughtIn();
  } finally {
    isBringingSample.value = false;
  }
}

async function broughtIn(): Promise<boolean> {
  const here = await opening;
  if (!here || here.readOnly || bringing.peek()) return false;
  const answer = await fetch(`/samples/${SAMPLE_FILE}`).catch(() => null);
  if (!answer?.ok) {
    complain(sayBook.sampleMissing);
    return false;
  }
  const file = await answer.blob();
  // Without this the entries deleted earlier would stay deleted: a merge does not restore them.
  const { forgetThrownAway } = await import('../../book/sample.ts');
  const forgotten = await forgetThrownAway(here);
  if (!forgotten.ok) {
    complain(bookFaultWords(forgotten.fault));
    return false;
  }
  await lookAt(file);
  return bringIn();
}

/** Moves the sample book to the bin, with undo. */
export async function throwSampleAway(): Promise<void> {
  const here = book.value;
  if (!here) return;
  const { throwAway } = await import('../../book/sample.ts');
  const thrown = await throwAway(here);
  if (!thrown.ok) return complain(bookFaultWords(thrown.fault));
  const { away, stay, undo } = thrown.value;
  if (away === 0) tell(sayBook.sampleInUse);
  else tell(stay === 0 ? sayBook.sampleAway : sayBook.sampleAwayBut(stay), undo);
}
