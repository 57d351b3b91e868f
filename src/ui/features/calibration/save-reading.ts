import type { PhotoReading } from '../../../../workers/calibration.ts';
import type { StoredPhoto } from '../../../../workers/photo.ts';
import type { CardReading } from '../../../book/schema/calibration.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { cardRemarkWords } from '../../../messages/calibration-messages.ts';
import { photographRemarkWords } from '../../../messages/photograph-messages.ts';
import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { bookReady, showError, showNotice } from '../../state/studio.ts';
import { calibrationTexts, today } from '../../texts/calibration-texts.ts';

/** The sentences on a reading and on its photograph. */
export const readingRemarks = ({ remarks, photoRemarks }: PhotoReading): string[] => [
  ...remarks.map((remark) => cardRemarkWords(remark, formatNumber)),
  ...photoRemarks.map(photographRemarkWords),
];

function readingOf(of: PhotoReading, byHand: boolean): CardReading {
  return {
    date: today(),
    byHand,
    places: of.places.map(({ place, lab, corners: around }) => ({
      number: place.number,
      lab,
      corners: around.flat(),
    })),
    sd: of.sd,
    unevenness: of.unevenness,
    referenceResidual: of.referenceResidual,
    chart: of.chart?.mean ?? null,
    remarks: readingRemarks(of),
  };
}

/** Saves a reading with its card, together with the photograph. */
export async function keepReading(
  id: string,
  seen: PhotoReading,
  byHand: boolean,
  kept: StoredPhoto | null,
): Promise<void> {
  const book = await bookReady;
  // The current version, because another window may have changed the card.
  const card = evidenceEntries.peek()?.cards.find((each) => each.id === id);
  if (!book || !card) return;
  const file = kept
    ? await book.file({
        bytes: kept.photo,
        type: kept.type,
        width: kept.width,
        height: kept.height,
      })
    : null;
  const named = file?.ok ? file.value : null;
  const put = await book.put({
    kind: 'card',
    id,
    over: card,
    body: {
      ...card.body,
      leftOut: [],
      reading: { ...readingOf(seen, byHand), ...(named ? { photo: named.ref } : {}) },
    },
    ...(named && kept
      ? {
          files: [named],
          thumbnail: { of: named.ref.file, bytes: kept.small, type: kept.type },
        }
      : {}),
  });
  if (put.ok) showNotice(calibrationTexts.readKept, put.value.undo);
  else showError(bookFaultWords(put.fault));
}

/** Excludes places of a card from calibration; an empty list includes all again. */
export async function leaveOut(id: string, numbers: readonly number[]): Promise<void> {
  const book = await bookReady;
  const card = evidenceEntries.peek()?.cards.find((each) => each.id === id);
  if (!book || !card) return;
  const put = await book.put({
    kind: 'card',
    id,
    over: card,
    body: { ...card.body, leftOut: numbers },
  });
  if (put.ok)
    showNotice(
      numbers.length === 0 ? calibrationTexts.takenIn : calibrationTexts.leftOut,
      put.value.undo,
    );
  else showError(bookFaultWords(put.fault));
}
