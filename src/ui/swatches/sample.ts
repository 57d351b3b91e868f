import type { CurvesBody, MeasuredSample } from '../../book/swatches.ts';
import { guessTable } from '../../pigment/calibrate/samples.ts';
import { curvesFaultWords, readSpectra } from '../../pigment/calibrate/spectra.ts';
import { pigmentOf } from '../../pigment/facts.ts';
import { labelOf, nameIn } from '../../pigment/label.ts';
import type { Stock } from '../../pigment/stock.ts';
import { fail, ok, type Result } from '../../result.ts';
import { calibrationTexts } from '../words/swatches.ts';

/** The samples of a file, with the composition assigned to each. */
export type Samples = Pick<CurvesBody, 'name' | 'geometry' | 'specular' | 'samples'> & {
  readonly remarks: readonly string[];
};

/**
 * Parses a file of spectra and guesses each sample's composition from its name.
 * @param name of the file
 * @returns a sentence as fault
 */
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

/** The message for an invalid composition; '' when it is valid. */
export function rowFault({ parts }: MeasuredSample): string {
  const once = new Set(parts.map(({ pigment }) => pigment)).size === parts.length;
  const sound = parts.every((part) => part.parts > 0 && Number.isFinite(part.parts));
  return once && sound ? '' : calibrationTexts.rowParts;
}
