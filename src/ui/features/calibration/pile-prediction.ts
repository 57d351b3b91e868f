import { storedSurface } from '../../../book/schema/calibration-evidence.ts';
import type { PileBody } from '../../../book/schema/palette.ts';
import { inSpecularMode, type Part } from '../../../calibration/painted-swatch.ts';
import { type Reflectance, spectrum } from '../../../colour/grid.ts';
import { type Lab, labOf } from '../../../colour/lab.ts';
import { opaque, type Paint } from '../../../optics/opaque.ts';
import { addSurface } from '../../../optics/surface.ts';
import { curveOfEntry, mixtureShelfOf } from '../../../pigment/mixing-shelf.ts';
import type { Stock } from '../../../pigment/stock.ts';
import { labelOf } from '../../../pigment/stock-label.ts';
import { joinWords, midSentence } from '../../../wording.ts';
import { partsWords } from '../../components/drawn/alternative-text.ts';

/** The observed colour of a pile. */
export interface ObservedPile {
  readonly lab: Lab;
  readonly known: PileBody['known'];
  /** Measured reflectance under {@link storedSurface}'s surface, 0…1; null when not measured. */
  readonly R: Reflectance | null;
}

/**
 * Converts a measured spectrum to the surface under which the book stores observations.
 * @param specular how the file was measured; null counts as that surface's own setting
 */
export function observedFromSpectrum(
  R: Reflectance,
  specular: 'included' | 'excluded' | null,
  stock: Stock,
): ObservedPile {
  const as = { id: '', parts: [], kind: 'measured' as const, lab: labOf(R), R };
  const surface = storedSurface(stock);
  const seen = inSpecularMode(as, specular ?? surface.specular, surface);
  return { lab: seen.lab, known: 'measured', R: seen.R };
}

/**
 * Converts a colour judged on the screen to the surface under which the book stores observations.
 */
export const observedFromScreen = (lab: Lab, stock: Stock): Lab =>
  inSpecularMode(
    { id: '', parts: [], kind: 'photographed', lab, R: null },
    stock.surface.specular,
    storedSurface(stock),
  ).lab;

/**
 * Predicted colour of a pile, under the surface with which the book stores observations. Null when
 * the parts are invalid or a paint has no curve.
 */
export function predictPile(mixed: readonly Part[], stock: Stock): Lab | null {
  const once = new Set(mixed.map(({ pigment }) => pigment)).size === mixed.length;
  if (mixed.length === 0 || !once || !mixed.every((part) => part.parts > 0)) return null;
  const paints: Paint[] = [];
  for (const { pigment } of mixed) {
    const entry = stock.entries.find(({ id }) => id === pigment);
    const paint = entry && curveOfEntry(stock, entry);
    if (!paint) return null;
    paints.push(paint);
  }
  const R: Reflectance = opaque(
    mixed.map((part) => part.parts),
    paints,
    spectrum(),
  );
  return labOf(addSurface(R, storedSurface(stock)));
}

/**
 * A logged pile in its stored form, with its lots, date and prediction. Null when there is no
 * prediction.
 * @param date ISO date
 */
export function pileBodyOf(
  mixed: readonly Part[],
  { lab, known, R }: ObservedPile,
  stock: Stock,
  { date, note }: { readonly date: string; readonly note: string },
): PileBody | null {
  const foreseen = predictPile(mixed, stock);
  if (foreseen === null) return null;
  const entries = mixed.map(({ pigment }) => stock.entries.find(({ id }) => id === pigment)!);
  const paints = mixtureShelfOf(stock).paints.map(({ pigment }) => pigment);
  const named = entries.map(({ pigment, id }) =>
    paints.includes(`${pigment}#${id}`) ? `${pigment}#${id}` : pigment,
  );
  const total = mixed.reduce((sum, part) => sum + part.parts, 0);
  return {
    name: joinWords(
      mixed.map(
        (part, i) => `${partsWords(part.parts)} ${midSentence(labelOf(stock, entries[i]!))}`,
      ),
    ),
    note,
    date,
    mixture: {
      recipe: mixed.map((part, i) => ({ pigment: named[i]!, share: part.parts / total })),
      lab: foreseen,
      deltaE00: 0,
      reachable: true,
      parts: mixed.map((part, i) => ({ pigment: named[i]!, parts: part.parts })),
      partsLab: foreseen,
      partsDeltaE00: 0,
    },
    lots: entries.map(({ lot, id }, i) => ({ pigment: named[i]!, lot, entry: id })),
    seen: lab,
    known,
    ...(R ? { reflectance: Array.from(R) } : {}),
  };
}
