import { asKept } from '../../book/learnt.ts';
import type { PileBody } from '../../book/palette.ts';
import { type Reflectance, spectrum } from '../../colour/grid.ts';
import { type Lab, labOf } from '../../colour/lab.ts';
import { opaque, type Paint } from '../../optics/opaque.ts';
import { addSurface } from '../../optics/surface.ts';
import { type Part, seenAs } from '../../pigment/calibrate/swatches.ts';
import { labelOf } from '../../pigment/label.ts';
import { curveOfEntry, shelfOfStock } from '../../pigment/mixable.ts';
import { inSentence } from '../../pigment/near.ts';
import type { Stock } from '../../pigment/stock.ts';
import { listed, partsWords } from '../drawn/say.ts';

/** How a pile came out. */
export interface CameOut {
  readonly lab: Lab;
  readonly known: PileBody['known'];
  /** Measured, as the book keeps what was seen. */
  readonly R: Reflectance | null;
}

/** A measured spectrum as the book keeps what was seen; where the file does not say how, it was seen so. */
export function measured(
  R: Reflectance,
  specular: 'included' | 'excluded' | null,
  stock: Stock,
): CameOut {
  const as = { id: '', parts: [], kind: 'measured' as const, lab: labOf(R), R };
  const surface = asKept(stock);
  const seen = seenAs(as, specular ?? surface.specular, surface);
  return { lab: seen.lab, known: 'measured', R: seen.R };
}

/** A colour that was judged beside those of the screen, as the book keeps what was seen. */
export const judged = (lab: Lab, stock: Stock): Lab =>
  seenAs(
    { id: '', parts: [], kind: 'photographed', lab, R: null },
    stock.surface.specular,
    asKept(stock),
  ).lab;

/** What the shelf foresees of a pile, as the book keeps what was seen; null where it is none, or a paint has no curve. */
export function foreseenOf(mixed: readonly Part[], stock: Stock): Lab | null {
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
  return labOf(addSurface(R, asKept(stock)));
}

/** A logged pile as the book keeps it: with its lots, its day, and what was foreseen on it. */
export function pileBodyOf(
  mixed: readonly Part[],
  { lab, known, R }: CameOut,
  stock: Stock,
  { date, note }: { readonly date: string; readonly note: string },
): PileBody | null {
  const foreseen = foreseenOf(mixed, stock);
  if (foreseen === null) return null;
  const entries = mixed.map(({ pigment }) => stock.entries.find(({ id }) => id === pigment)!);
  const paints = shelfOfStock(stock).paints.map(({ pigment }) => pigment);
  const named = entries.map(({ pigment, id }) =>
    paints.includes(`${pigment}#${id}`) ? `${pigment}#${id}` : pigment,
  );
  const total = mixed.reduce((sum, part) => sum + part.parts, 0);
  return {
    name: listed(
      mixed.map(
        (part, i) => `${partsWords(part.parts)} ${inSentence(labelOf(stock, entries[i]!))}`,
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
