import { computed, signal } from '@preact/signals';
import { bookFaultWords } from '../../book/faults.ts';
import { isSample, SAMPLE_FILE } from '../../book/sampled.ts';
import { book, complain, opening, tell } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { bringIn, bringing, lookAt } from './bringing.ts';
import { cards } from './state.ts';

/** How many entries of the sample book are in the book; undefined until it is read. */
export const samplesThere = computed(() => cards.value?.filter(({ id }) => isSample(id)).length);

/** The copy that is on its way in is the sample book. */
export const isBringingSample = signal(false);

/** Brings the sample book in as any other copy; true once it is there. */
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
  // What was thrown away once would stay away: a copy does not bring back what was deleted.
  const { forgetThrownAway } = await import('../../book/sample.ts');
  const forgotten = await forgetThrownAway(here);
  if (!forgotten.ok) {
    complain(bookFaultWords(forgotten.fault));
    return false;
  }
  await lookAt(file);
  return bringIn();
}

/** Puts all of it into the bin, in one touch and with a way back. */
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
