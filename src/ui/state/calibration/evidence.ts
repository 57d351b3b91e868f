import { computed, effect, signal } from '@preact/signals';
import {
  collectEvidence,
  type EvidenceEntries,
  hasUnfittedEvidence,
  loggedPile,
} from '../../../book/schema/calibration-evidence.ts';
import type { Entry, Kind } from '../../../book/schema/record.ts';
import type { Book } from '../../../book/store/open-book.ts';
import { accuracyOf } from '../../../calibration/logged-pile.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { ownStock } from '../../features/shelf/stock-state.ts';
import { book, bookRevision, showError } from '../studio.ts';

/**
 * All swatch cards, files of curves and logged piles in the book, newest first; null until they are
 * read.
 */
export const evidenceEntries = signal<EvidenceEntries | null>(null);

/** The evidence that they give about the paints now on the shelf. */
export const currentEvidence = computed(
  () => evidenceEntries.value && collectEvidence(evidenceEntries.value, ownStock.value),
);

/** Whether there is evidence to which the shelf's curves were not fitted. */
export const hasNewEvidence = computed(
  () =>
    currentEvidence.value !== null && hasUnfittedEvidence(currentEvidence.value, ownStock.value),
);

/** Accuracy of predictions for piles whose lots are still in use. */
export const accuracy = computed(() =>
  accuracyOf(
    (evidenceEntries.value?.piles ?? [])
      .map((pile) => loggedPile(pile, ownStock.value))
      .filter((pile) => pile !== null),
  ),
);

/** Cache of entries by id; only entries that changed are read again. */
const known = new Map<string, Entry>();

async function entriesOf<K extends Kind>(from: Book, kind: K): Promise<Entry<K>[]> {
  const cards = await from.list(kind);
  if (!cards.ok) {
    showError(bookFaultWords(cards.fault));
    return [];
  }
  const entries: Entry<K>[] = [];
  for (const { id, changed, conflictOf } of cards.value) {
    // A conflict copy would count its evidence twice.
    if (conflictOf !== undefined) continue;
    const before = known.get(id);
    if (before?.changed === changed) {
      entries.push(before as unknown as Entry<K>);
      continue;
    }
    const found = await from.get(kind, id);
    if (!found.ok) continue;
    known.set(id, found.value as unknown as Entry);
    entries.push(found.value);
  }
  return entries.sort((p, q) => (p.created < q.created ? 1 : -1));
}

const isSame = (before: readonly unknown[], now: readonly unknown[]): boolean =>
  before.length === now.length && before.every((one, i) => one === now[i]);

let last = 0;
effect(() => {
  const here = book.value;
  bookRevision.value;
  const mine = ++last;
  if (!here) return;
  void (async () => {
    const [cards, curves, piles] = [
      await entriesOf(here, 'card'),
      await entriesOf(here, 'curves'),
      await entriesOf(here, 'pile'),
    ];
    if (mine !== last) return;
    // Keep the same object while nothing has changed, so that a fit made from it stays valid.
    const was = evidenceEntries.peek();
    const same =
      was && isSame(was.cards, cards) && isSame(was.curves, curves) && isSame(was.piles, piles);
    if (!same) evidenceEntries.value = { cards, curves, piles };
  })();
});
