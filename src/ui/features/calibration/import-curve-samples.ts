import { lotsOf } from '../../../book/schema/calibration-evidence.ts';
import type { Entry } from '../../../book/schema/record.ts';
import { spectrum } from '../../../colour/grid.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { spectraCgats, spectraCsv } from '../../../pigment/import/read-spectra.ts';
import { fail, type Result } from '../../../result.ts';
import { saveFile } from '../../components/save-file.ts';
import { bookReady, showError, showNotice } from '../../state/studio.ts';
import { calibrationTexts, today } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { type Samples, samplesOf } from './sample-file.ts';

const MOST_BYTES = 5_000_000;

/**
 * Reads the samples of a file.
 * @returns a sentence as fault
 */
export async function readFile(file: File): Promise<Result<Samples, string>> {
  if (file.size > MOST_BYTES) return fail(calibrationTexts.fileTooLarge);
  return samplesOf(await file.text(), file.name, ownStock.peek());
}

/**
 * Saves a file's samples, with the lots of their paints.
 * @returns true on success
 */
export async function keepCurves(
  { name, geometry, specular, samples }: Samples,
  over: Entry<'curves'> | null,
): Promise<boolean> {
  const book = await bookReady;
  if (!book) return false;
  const used = samples.flatMap(({ parts }) => parts.map(({ pigment }) => pigment));
  const put = await book.put({
    kind: 'curves',
    ...(over ? { id: over.id, over } : {}),
    body: {
      ...{ name, geometry, specular, samples },
      note: over?.body.note ?? '',
      date: over?.body.date ?? today(),
      lots: lotsOf(used, ownStock.value),
    },
  });
  if (put.ok) showNotice(calibrationTexts.curvesKept(name), put.value.undo);
  else showError(bookFaultWords(put.fault));
  return put.ok;
}

/** Exports the samples as a file for other programs. */
export async function exportCurves(
  { body }: Entry<'curves'>,
  form: 'cgats' | 'csv',
): Promise<void> {
  const { name, geometry, samples } = body;
  const all = samples.map(({ name: sample, reflectance }) => ({
    name: sample,
    R: spectrum<'R'>(reflectance),
  }));
  const text = form === 'csv' ? spectraCsv(all) : spectraCgats(all, geometry);
  const file = new File(
    [text],
    `${name.replace(/\.[^.]*$/, '')}.${form === 'csv' ? 'csv' : 'txt'}`,
    {
      type: form === 'csv' ? 'text/csv' : 'text/plain',
    },
  );
  if ((await saveFile(file)) === 'failed') showError(calibrationTexts.fileFailed);
}
