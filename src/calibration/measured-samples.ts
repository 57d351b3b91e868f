import { labOf } from '../colour/lab.ts';
import type { Surface } from '../optics/surface.ts';
import type { Sample, Spectra } from '../pigment/import/cgats.ts';
import { fail, ok, type Result } from '../result.ts';
import { inSpecularMode, type PaintedSwatch, type Part } from './painted-swatch.ts';

/** One row of the table that maps measured samples to mixtures. */
export interface SampleRow {
  readonly sample: string;
  /** Its composition by volume; empty to leave it out. */
  readonly parts: readonly Part[];
}

/** A pigment with the names that may occur in sample names. */
interface NamedPigment {
  readonly pigment: string;
  readonly label: string;
  readonly synonyms?: readonly string[];
}

export type SampleFault =
  | { readonly code: 'sample-unknown'; readonly sample: string }
  | { readonly code: 'sample-parts'; readonly sample: string }
  | { readonly code: 'sample-none' };

/**
 * Guesses the table from the sample names: "Yellow ochre", "yellow ochre 1:4" (with the white),
 * "yellow ochre + ultramarine 2:1". Names that are not understood get no parts; the user completes
 * them.
 */
export function guessTable(
  samples: readonly Sample[],
  pigments: readonly NamedPigment[],
  white: string,
): SampleRow[] {
  const names = pigments
    .flatMap(({ pigment, label, synonyms = [] }) =>
      [pigment, label, ...synonyms].map((name) => ({ pigment, name: plain(name) })),
    )
    .filter(({ name }) => name !== '')
    // Longer names first, so that "burnt umber" does not match "umber".
    .sort((p, q) => q.name.length - p.name.length);
  return samples.map(({ name: sample }) => {
    let left = ` ${plain(sample)} `;
    const found: { pigment: string; at: number }[] = [];
    for (const { pigment, name } of names) {
      const at = left.indexOf(` ${name} `);
      if (at < 0) continue;
      left = left.replace(` ${name} `, ` ${'_'.repeat(name.length)} `);
      if (!found.some((each) => each.pigment === pigment)) found.push({ pigment, at });
    }
    const order = found.toSorted((p, q) => p.at - q.at).map(({ pigment }) => pigment);
    const ratio = /(\d+(?:[.,]\d+)?)\s*[:/]\s*(\d+(?:[.,]\d+)?)/.exec(sample);
    const [first, second] = ratio ? [number(ratio[1]!), number(ratio[2]!)] : [1, 1];
    const used = order.length === 1 && ratio && order[0] !== white ? [order[0]!, white] : order;
    if (used.length === 1) return { sample, parts: [{ pigment: used[0]!, parts: 1 }] };
    if (used.length !== 2 || !ratio || !(first > 0 && second > 0)) return { sample, parts: [] };
    return {
      sample,
      parts: [
        { pigment: used[0]!, parts: first },
        { pigment: used[1]!, parts: second },
      ],
    };
  });
}

const number = (text: string): number => Number(text.replace(',', '.'));
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/**
 * Converts measured samples to swatches by the table. Spectra from a 45/0 instrument, which
 * excludes gloss, are converted to the surface's specular mode.
 * @param id returns a swatch id for a sample name
 */
export function measuredSwatches(
  spectra: Spectra,
  table: readonly SampleRow[],
  surface: Surface,
  id: (sample: string) => string = (sample) => `measured:${sample}`,
): Result<readonly PaintedSwatch[], SampleFault> {
  const swatches: PaintedSwatch[] = [];
  for (const { sample, parts } of table) {
    const found = spectra.samples.find(({ name }) => name === sample);
    if (!found) return fail({ code: 'sample-unknown', sample });
    if (parts.length === 0) continue;
    const once = new Set(parts.map(({ pigment }) => pigment)).size === parts.length;
    if (!once || !parts.every((part) => part.parts > 0 && Number.isFinite(part.parts)))
      return fail({ code: 'sample-parts', sample });
    const painted: PaintedSwatch = {
      id: id(sample),
      parts,
      kind: 'measured',
      lab: labOf(found.R),
      R: found.R,
    };
    swatches.push(inSpecularMode(painted, spectra.specular ?? surface.specular, surface));
  }
  return swatches.length > 0 ? ok(swatches) : fail({ code: 'sample-none' });
}
