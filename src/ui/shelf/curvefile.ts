import type { Spectrum } from '../../colour/grid.ts';
import type { Paint } from '../../optics/opaque.ts';
import type { Surface } from '../../optics/surface.ts';
import { readCgats } from '../../pigment/cgats.ts';
import { shelfFaultWords } from '../../pigment/fault.ts';
import { readShelf } from '../../pigment/read.ts';
import { paintOfMasstone } from '../../pigment/seen.ts';
import { spectraFaultWords } from '../../pigment/unreadable.ts';
import { fail, ok, type Result } from '../../result.ts';
import { sayShelf } from '../words/shelf.ts';

/** One paint that a file offers. */
export interface Offered {
  readonly name: string;
  readonly paint: Paint;
}

/** What a file holds, and what was assumed when it was read. */
export interface CurveFile {
  readonly offered: readonly Offered[];
  /** Spectra of masstones: their S is an estimate. */
  readonly isSpectra: boolean;
  readonly remarks: readonly string[];
}

const MOST_BYTES = 5_000_000;

/**
 * The paints of a file: rows of K and S, or measured spectra of masstones (CGATS).
 * @param surface through which spectra were measured; they keep the file's own word on gloss
 * @param S that spectra are given: of the lot before, or one number
 * @returns a sentence where it cannot be read
 */
export async function readCurves(
  file: File,
  surface: Surface,
  S: number | Spectrum<'S'>,
): Promise<Result<CurveFile, string>> {
  if (file.size > MOST_BYTES) return fail(sayShelf.fileTooLarge);
  const text = await file.text();
  if (/^\s*BEGIN_DATA\b/m.test(text) || /^\uFEFF?\s*CGATS/i.test(text)) {
    const spectra = readCgats(text);
    if (!spectra.ok) return fail(spectraFaultWords(spectra.fault));
    const { samples, specular, remarks } = spectra.value;
    // A file that does not say how was measured with the gloss, however the shelf is looked at.
    const through = { ...surface, specular: specular ?? 'included' } as const;
    return ok({
      offered: samples.map(({ name, R }) => ({
        name,
        paint: paintOfMasstone(R, through, S).paint,
      })),
      isSpectra: true,
      remarks,
    });
  }
  const shelf = readShelf(text, { name: file.name, surface });
  if (!shelf.ok) return fail(shelfFaultWords(shelf.fault));
  const { paints, remarks } = shelf.value;
  return ok({
    offered: paints.map(({ label, paint }) => ({ name: label, paint })),
    isSpectra: false,
    // What makes a shelf odd (one paint, no white) is nothing to say of one paint's curve.
    remarks: remarks.filter((remark) => /\bnm\b/.test(remark)),
  });
}
