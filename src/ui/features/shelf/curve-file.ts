import type { Spectrum } from '../../../colour/grid.ts';
import { shelfFaultWords, spectraFaultWords } from '../../../messages/shelf-file-faults.ts';
import type { Paint } from '../../../optics/opaque.ts';
import type { Surface } from '../../../optics/surface.ts';
import { readCgats } from '../../../pigment/import/cgats.ts';
import { readShelf } from '../../../pigment/import/read-shelf.ts';
import { paintOfMasstone } from '../../../pigment/paint-from-masstone.ts';
import { fail, ok, type Result } from '../../../result.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { shelfRemark } from '../../state/shelf-labels.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';

/** One paint found in a file. */
interface Offered {
  readonly name: string;
  readonly paint: Paint;
}

/** The contents of a file, and the assumptions made in reading it. */
export interface CurveFile {
  readonly offered: readonly Offered[];
  /** The file has reflectance spectra of masstones, so S is estimated. */
  readonly isSpectra: boolean;
  readonly remarks: readonly string[];
}

const MOST_BYTES = 5_000_000;

/**
 * Reads the paints in a file: rows of K and S, or measured spectra of masstones (CGATS).
 * @param surface under which spectra were measured; the file's own statement about specular
 *   reflection overrides its `specular`
 * @param S       scattering to assume for spectra: that of the previous lot, or one number for all
 *   bands
 * @returns a sentence as fault when the file cannot be read
 */
export async function readCurves(
  file: File,
  surface: Surface,
  S: number | Spectrum<'S'>,
): Promise<Result<CurveFile, string>> {
  if (file.size > MOST_BYTES) return fail(shelfTexts.fileTooLarge);
  const text = await file.text();
  if (/^\s*BEGIN_DATA\b/m.test(text) || /^\uFEFF?\s*CGATS/i.test(text)) {
    const spectra = readCgats(text);
    if (!spectra.ok) return fail(spectraFaultWords(spectra.fault, formatNumber));
    const { samples, specular } = spectra.value;
    const remarks = spectra.value.remarks.map(shelfRemark);
    // Without a statement in the file, assume that specular reflection was included, whatever the
    // shelf's setting.
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
  if (!shelf.ok) return fail(shelfFaultWords(shelf.fault, formatNumber));
  const { paints, remarks } = shelf.value;
  return ok({
    offered: paints.map(({ label, paint }) => ({ name: label, paint })),
    isSpectra: false,
    // Remarks about a whole shelf (one paint, no white) do not apply to a single paint's curve.
    remarks: remarks.filter(({ code }) => code.startsWith('grid-')).map(shelfRemark),
  });
}
