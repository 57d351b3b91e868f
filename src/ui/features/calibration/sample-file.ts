import type { CurvesBody, MeasuredSample } from '../../../book/schema/calibration.ts';
import { guessTable } from '../../../calibration/measured-samples.ts';
import { curvesFaultWords } from '../../../messages/shelf-file-faults.ts';
import { readSpectra } from '../../../pigment/import/read-spectra.ts';
import { pigmentOf } from '../../../pigment/pigment-facts.ts';
import type { Stock } from '../../../pigment/stock.ts';
import { labelOf, nameIn } from '../../../pigment/stock-label.ts';
import { fail, ok, type Result } from '../../../result.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { shelfRemark } from '../../state/shelf-labels.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';

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
  if (!read.ok) return fail(curvesFaultWords(read.fault, formatNumber));
  const { samples, geometry, specular } = read.value;
  const remarks = read.value.remarks.map(shelfRemark);
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
