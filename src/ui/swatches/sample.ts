import type { CurvesBody, MeasuredSample } from '../../book/swatches.ts';
import { guessTable } from '../../pigment/calibrate/samples.ts';
import { curvesFaultWords, readSpectra } from '../../pigment/calibrate/spectra.ts';
import { pigmentOf } from '../../pigment/facts.ts';
import { labelOf, nameIn } from '../../pigment/label.ts';
import type { Stock } from '../../pigment/stock.ts';
import { fail, ok, type Result } from '../../result.ts';
import { saySwatches } from '../words/swatches.ts';

/** Samples of a file, with what each is said to be. */
export type Samples = Pick<CurvesBody, 'name' | 'geometry' | 'specular' | 'samples'> & {
  readonly remarks: readonly string[];
};

/** The samples of a text, told by their names what they are as far as that goes; or a sentence. */
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
