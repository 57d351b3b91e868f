import { batch, computed, signal } from '@preact/signals';
import type { PhotoReading, Read, Shared } from '../../../../workers/calibration.ts';
import type { StoredPhoto } from '../../../../workers/photo.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { CalibrationFault } from '../../../calibration/calibration-fault.ts';
import { readChart } from '../../../calibration/colour-chart.ts';
import type { Point } from '../../../calibration/homography.ts';
import type { CardPlace } from '../../../calibration/swatch-card.ts';
import { USUAL_REFERENCES } from '../../../calibration/tone-correction.ts';
import type { Lab } from '../../../colour/lab.ts';
import { calibrationFaultWords } from '../../../messages/calibration-messages.ts';
import { photoFaultWords } from '../../../messages/photograph-messages.ts';
import type { PhotoFault } from '../../../photo/image-file.ts';
import { fail } from '../../../result.ts';
import { job } from '../../state/job.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { isAbort, readSwatches } from '../../state/worker-jobs.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import type { Shown } from './CardPlaces.tsx';
import { keepReading, readingRemarks } from './save-reading.ts';

/** The photograph to read, with its object URL. */
interface Taken {
  readonly file: Blob;
  readonly url: string;
}
export const cardPhoto = signal<Taken | null>(null);
export const readingWork = job();
/** Why it could not be read, as a sentence; '' when there is no fault. */
export const readFault = signal('');
/** Number of the place that made the reading fail, when it can be left out; otherwise null. */
export const blockingPlace = signal<number | null>(null);
/** Numbers of places that the reading ignores. */
export const ignoredPlaces = signal<readonly number[]>([]);
export const cardReading = signal<PhotoReading | null>(null);

/** The reading in the form that the screen shows. */
export const displayedReading = computed<Shown | null>(() => {
  const now = cardReading.value;
  return (
    now && {
      places: now.places.map(({ place, lab }) => ({ ...place, lab })),
      outlines: [...now.places, ...now.references].map(({ place, corners: around }) => ({
        words: `${place.number}`,
        corners: around,
      })),
      unevenness: now.unevenness,
      referenceResidual: now.referenceResidual,
      remarks: readingRemarks(now),
    }
  );
});

/** L* of the white and grey references, set by the painter. */
export const whiteIs = signal(USUAL_REFERENCES.white[0]);
export const greyIs = signal(USUAL_REFERENCES.grey[0]);
/** Reference colours of a colour chart, from its own file. */
export const chartLabs = signal<readonly Lab[] | null>(null);
export const chartCorners = signal<readonly Point[] | null>(null);
export const corners = signal<readonly Point[] | null>(null);

/** Clears the photograph and its reading, but not the references; revokes its object URL. */
export function forgetPhoto(): void {
  readingWork.stop();
  if (cardPhoto.peek()) URL.revokeObjectURL(cardPhoto.peek()!.url);
  batch(() => {
    cardPhoto.value = null;
    readFault.value = '';
    blockingPlace.value = null;
    ignoredPlaces.value = [];
    cardReading.value = null;
    chartCorners.value = null;
    corners.value = null;
  });
}

export function takePhoto(file: Blob): void {
  forgetPhoto();
  cardPhoto.value = { file, url: URL.createObjectURL(file) };
}

const referencesNow = (): NonNullable<Shared['references']> => ({
  white: [whiteIs.peek(), 0, 0],
  grey: [greyIs.peek(), 0, 0],
});

const options = (): Shared => ({
  references: referencesNow(),
  ...(corners.peek() ? { corners: corners.peek()! } : {}),
  ...(chartLabs.peek() && chartCorners.peek()
    ? { chart: { labs: chartLabs.peek()!, corners: chartCorners.peek()! } }
    : {}),
});

/** A place marked by the painter, in fractions of the photograph's width and height. */
interface Touched {
  readonly place: Pick<CardPlace, 'number' | 'kind' | 'label' | 'parts'>;
  readonly at: Point;
}

/**
 * Reads a photograph, by the card's printed marks or the points that the painter marked. Null when
 * stopped.
 */
export async function readMarkedPhoto(
  file: Blob,
  how:
    | { readonly kind: 'read'; readonly plan: Entry<'card'>['body']['plan'] }
    | { readonly kind: 'touch'; readonly touches: readonly Touched[] },
): Promise<{ readonly read: Read; readonly kept: StoredPhoto | null } | null> {
  let kept: StoredPhoto | null = null;
  const read = await readingWork.run(async ({ signal, onProgress: onNews }): Promise<Read> => {
    try {
      return await readSwatches(
        { ...how, file, options: options() },
        {
          signal,
          onNews: (news) => {
            if (news.kind === 'kept') kept = news.kept;
            else onNews(news.done);
          },
        },
      );
    } catch (error) {
      if (isAbort(error)) throw error;
      return fail({ code: 'not-readable', why: (error as Error).message });
    }
  });
  return read && { read, kept };
}

/** Reads the current photograph as this card and saves the reading at once. */
export async function readAs(
  card: Entry<'card'>,
  touches: readonly Touched[] | null = null,
): Promise<void> {
  const now = cardPhoto.peek();
  if (!now) return;
  readFault.value = '';
  blockingPlace.value = null;
  const { plan } = card.body;
  const places = plan.places.filter(({ number }) => !ignoredPlaces.peek().includes(number));
  const looked = await readMarkedPhoto(
    now.file,
    touches ? { kind: 'touch', touches } : { kind: 'read', plan: { ...plan, places } },
  );
  if (cardPhoto.peek() !== now) return;
  if (!looked) {
    readFault.value = calibrationTexts.stopped;
    return;
  }
  const { read, kept } = looked;
  if (!read.ok) {
    const { fault } = read;
    readFault.value = readFaultWords(fault);
    const at = touches === null && 'place' in fault ? fault.place : null;
    const isPaint = places.some(({ number, kind }) => number === at && kind === 'paint');
    blockingPlace.value = isPaint ? at : null;
    return;
  }
  cardReading.value = read.value;
  await keepReading(card.id, read.value, touches !== null, kept);
}

/** The sentence for a fault of reading a photograph or a card. */
export const readFaultWords = (fault: PhotoFault | CalibrationFault): string =>
  /^(card|touch|chart|tint|swatch)-|^stopped$/.test(fault.code)
    ? calibrationFaultWords(fault as CalibrationFault, formatNumber)
    : photoFaultWords(fault as PhotoFault);

/** Reads a chart's reference colours from its file; on failure sets the fault instead. */
export async function takeChart(file: File): Promise<void> {
  const read = readChart(await file.text());
  chartLabs.value = read.ok ? read.value : null;
  readFault.value = read.ok ? '' : calibrationFaultWords(read.fault, formatNumber);
}
