import { bookFaultWords } from '../../book/faults.ts';
import { lotsOf } from '../../book/learnt.ts';
import type { Entry } from '../../book/record.ts';
import type { CurvesBody, MeasuredSample } from '../../book/swatches.ts';
import { spectrum } from '../../colour/grid.ts';
import { guessTable } from '../../pigment/calibrate/samples.ts';
import {
  curvesFaultWords,
  readSpectra,
  spectraCgats,
  spectraCsv,
} from '../../pigment/calibrate/spectra.ts';
import { pigmentOf } from '../../pigment/facts.ts';
import { labelOf, nameIn } from '../../pigment/label.ts';
import type { Stock } from '../../pigment/stock.ts';
import { fail, ok, type Result } from '../../result.ts';
import { saveFile } from '../book/hand.ts';
import { ownStock } from '../shelf/state.ts';
import { complain, opening, tell } from '../studio.ts';
import { saySwatches, today } from './words.ts';

/** Samples of a file, with what each is said to be. */
export type Samples = Pick<CurvesBody, 'name' | 'geometry' | 'specular' | 'samples'> & {
  readonly remarks: readonly string[];
};

const MOST_BYTES = 5_000_000;

/** The samples of a file, told by their names what they are as far as that goes; or a sentence. */
export async function readFile(file: File): Promise<Result<Samples, string>> {
  if (file.size > MOST_BYTES) return fail(saySwatches.fileTooLarge);
  return samplesOf(await file.text(), file.name, ownStock.peek());
}

export function samplesOf(text: string, name: string, stock: Stock): Result<Samples, string> {
  const read = readSpectra(text);
  if (!read.ok) return fail(curvesFaultWords(read.fault));
  const { samples, geometry, specular, remarks } = read.value;
  const named = stock.entries.map((entry) => ({
    pigment: entry.id,
    label: labelOf(stock, entry),
    synonyms: [nameIn(stock, entry.pigment), ...(pigmentOf(entry.pigment)?.synonyms ?? [])],
  }));
  const table = guessTable(samples, named, stock.white ?? '');
  return ok({
    ...{ name, geometry, specular, remarks },
    samples: samples.map(({ name: sample, R }, i) => ({
      name: sample,
      parts: table[i]!.parts,
      reflectance: Array.from(R),
    })),
  });
}

/** What is wrong with what a sample is said to be; empty where nothing is. */
export function rowFault({ parts }: MeasuredSample): string {
  const once = new Set(parts.map(({ pigment }) => pigment)).size === parts.length;
  const sound = parts.every((part) => part.parts > 0 && Number.isFinite(part.parts));
  return once && sound ? '' : saySwatches.rowParts;
}

/** Keeps a file's samples, with the lots that they are of. */
export async function keepCurves(
  { name, geometry, specular, samples }: Samples,
  over: Entry<'curves'> | null,
): Promise<boolean> {
  const book = await opening;
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
  if (put.ok) tell(saySwatches.curvesKept(name), put.value.undo);
  else complain(bookFaultWords(put.fault));
  return put.ok;
}

/** The samples as a file for other programs. */
export async function takeCurvesOut(
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
  if ((await saveFile(file)) === 'failed') complain(saySwatches.fileFailed);
}
