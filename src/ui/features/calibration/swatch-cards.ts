import { computed, signal } from '@preact/signals';
import { lotsOf } from '../../../book/schema/calibration-evidence.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Undo } from '../../../book/store/open-book.ts';
import { cardPaintOf } from '../../../calibration/accept-calibration.ts';
import { drawCard } from '../../../calibration/card-svg.ts';
import type { Part } from '../../../calibration/painted-swatch.ts';
import {
  type CardPaint,
  type Paper,
  planCards,
  type SwatchCard,
} from '../../../calibration/swatch-card.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { entryHazardOf } from '../../../pigment/entry-hazard.ts';
import type { Stock, StockEntry } from '../../../pigment/stock.ts';
import { labelOf } from '../../../pigment/stock-label.ts';
import { saveFile } from '../../components/save-file.ts';
import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { bookReady, showError, showNotice } from '../../state/studio.ts';
import { calibrationTexts, dayWords, today } from '../../texts/calibration-texts.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';

/** Options for new cards. */
interface NewCardOptions {
  /** Ids of entries. Null selects those that were never brushed out, or all when none is left. */
  readonly paints: readonly string[] | null;
  readonly tints: readonly number[];
  readonly paper: Paper;
  readonly piles: readonly (readonly Part[])[];
}
export const cardOptions = signal<NewCardOptions>({
  paints: null,
  tints: [4],
  paper: 'A4',
  piles: [],
});
export const setCardOptions = (change: Partial<NewCardOptions>): void => {
  cardOptions.value = { ...cardOptions.value, ...change };
};

/** All paints in stock except the white. */
export const brushable = computed(() =>
  ownStock.value.entries.filter(({ id, amount }) => id !== ownStock.value.white && amount !== 0),
);

/** Entries that are alone on some place of a card. */
const onCards = computed(
  () =>
    new Set(
      (evidenceEntries.value?.cards ?? []).flatMap(({ body }) =>
        body.plan.places.flatMap(({ parts }) => (parts.length === 1 ? [parts[0]!.pigment] : [])),
      ),
    ),
);
export const notYet = computed(() =>
  brushable.value.filter(({ id, curve }) => curve === null && !onCards.value.has(id)),
);

export const chosenPaints = computed<readonly StockEntry[]>(() => {
  const { paints } = cardOptions.value;
  if (paints !== null) return brushable.value.filter(({ id }) => paints.includes(id));
  return notYet.value.length > 0 ? notYet.value : brushable.value;
});

/** Number of the next card: one more than the highest number in the book. */
const nextNumber = computed(() =>
  (evidenceEntries.value?.cards ?? []).reduce(
    (next, { body }) =>
      Math.max(next, 1 + Number(/^\D*(\d+)/.exec(body.plan.name ?? '')?.[1] ?? 0)),
    1,
  ),
);

/** The pages of the new card; empty when there is nothing to brush out, or no white. */
export const pages = computed<readonly SwatchCard[]>(() => {
  const stock = ownStock.value;
  const white = stock.entries.find(({ id }) => id === stock.white);
  const { tints, paper, piles } = cardOptions.value;
  if (!white || (chosenPaints.value.length === 0 && piles.length === 0)) return [];
  const paints = stock.entries.filter(
    (entry) =>
      entry !== white &&
      (chosenPaints.value.includes(entry) ||
        piles.some((parts) => parts.some(({ pigment }) => pigment === entry.id))),
  );
  const mixtures = piles.map((parts) => ({ label: compositionWords(parts, stock), parts }));
  const name = calibrationTexts.cardName(nextNumber.value, dayWords(today()));
  return planCards(
    paintOf(white, stock),
    paints.map((entry) => paintOf(entry, stock)),
    { paper, tints, mixtures, name },
  );
});

/** A mixture in words, such as "Yellow ochre 2, ultramarine 1". */
export function compositionWords(parts: readonly Part[], stock: Stock): string {
  return parts
    .map(({ pigment, parts: amount }) => {
      const entry = stock.entries.find(({ id }) => id === pigment);
      const name = entry ? labelOf(stock, entry) : pigment;
      return parts.length === 1 ? name : `${name} ${Number(amount.toPrecision(3))}`;
    })
    .join(', ');
}

function paintOf(entry: StockEntry, stock: Stock): CardPaint {
  const known = cardPaintOf(entry.pigment, labelOf(stock, entry));
  const { level, hazard, caution, dryRefused } = entryHazardOf(stock, entry);
  const grave = level === 'toxic' || level === 'very_toxic';
  const words = [...(dryRefused ? [shelfTexts.dryRefused] : []), hazard, caution].join(' ').trim();
  return { ...known, pigment: entry.id, caution: grave ? words : '' };
}

export const nameOfPage = ({ name = '', page, pages: of }: SwatchCard): string =>
  of === 1 ? name : `${name}, ${calibrationTexts.pageOf(page, of)}`;

/**
 * Saves these pages in the book, so that their photographs can be read later: all or none.
 * @param onUndone called when the painter undoes it
 * @returns the ids of the cards; null on failure
 */
export async function keepCards(
  cards: readonly SwatchCard[],
  onUndone: () => void,
): Promise<readonly string[] | null> {
  const book = await bookReady;
  if (!book) return null;
  const ids: string[] = [];
  const undos: Undo[] = [];
  for (const plan of cards) {
    const used = plan.places.flatMap(({ parts }) => parts.map(({ pigment }) => pigment));
    const body = {
      ...{ name: nameOfPage(plan), note: '', date: today(), plan, leftOut: [] },
      lots: lotsOf([plan.white, ...used], ownStock.value),
    };
    const put = await book.put({ kind: 'card', body });
    if (!put.ok) {
      for (const undo of undos) await undo();
      showError(bookFaultWords(put.fault));
      return null;
    }
    ids.push(put.value.entry.id);
    undos.push(put.value.undo);
  }
  showNotice(calibrationTexts.cardKept(cards[0]?.name ?? ''), async () => {
    onUndone();
    for (const undo of undos.slice(1)) {
      const undone = await undo();
      if (!undone.ok) return undone;
    }
    return undos[0]!();
  });
  return ids;
}

/** Downloads a page as an SVG file that prints at its actual size. */
export async function takeFile(card: SwatchCard): Promise<void> {
  const name = nameOfPage(card).replace(/[^\p{L}\p{N}]+/gu, '-');
  const file = new File([drawCard(card)], `swatch-${name}.svg`, { type: 'image/svg+xml' });
  if ((await saveFile(file)) === 'failed') showError(calibrationTexts.fileFailed);
}

/** Moves a card, a file of curves or a pile to the bin, with undo. */
export async function binEntry({ id, body }: Entry): Promise<void> {
  const book = await bookReady;
  const removed = await book?.remove(id);
  if (!removed) return;
  if (removed.ok) showNotice(calibrationTexts.removed(body.name), removed.value.undo);
  else showError(bookFaultWords(removed.fault));
}
