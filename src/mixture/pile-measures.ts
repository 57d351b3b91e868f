import type { Shelf } from '../pigment/shelf.ts';
import type { MixturePart } from './mixture-types.ts';
import { predictColour, shelfPaintOf } from './predict.ts';
import { paintStrengthOf } from './search/compiled-shelf.ts';

/** One pigment of a pile by volume and weight. */
export interface Measure extends MixturePart {
  /** Share of the volume, 0…1. */
  readonly volume: number;
  /**
   * Share of the weight, 0…1; null unless the shelf's basis is volume and all densities are known.
   */
  readonly weight: number | null;
  /** Cubic centimetres and grams for the requested volume; grams null like `weight`. */
  readonly cm3: number;
  readonly grams: number | null;
}

/**
 * Measures of a pile by volume and by weight.
 * @param parts     by volume
 * @param cm3       volume of the whole pile
 * @param densityOf g/cm³ of a pigment's paste; null if unknown
 */
export function pileMeasures(
  parts: readonly MixturePart[],
  shelf: Pick<Shelf, 'basis'>,
  cm3: number,
  densityOf: (pigment: string) => number | null,
): Measure[] {
  const total = parts.reduce((sum, p) => sum + p.parts, 0);
  const heavy = parts.map((p) => {
    const density = shelf.basis === 'volume' ? densityOf(p.pigment) : null;
    return density === null ? null : p.parts * density;
  });
  const weighed = heavy.every((w) => w !== null);
  const weight = heavy.reduce<number>((sum, w) => sum + (w ?? 0), 0);
  return parts.map((part, i) => ({
    ...part,
    volume: part.parts / total,
    weight: weighed ? heavy[i]! / weight : null,
    cm3: (cm3 * part.parts) / total,
    grams: weighed ? (cm3 * heavy[i]!) / total : null,
  }));
}

/**
 * Sorts parts in mixing order: weak and light paints first, strong ones last, in small amounts
 * (common practice: a strong colour overpowers the rest and cannot be removed).
 */
export function mixingOrder(parts: readonly MixturePart[], shelf: Shelf): MixturePart[] {
  const rank = ({ pigment }: MixturePart) => {
    const [L] = predictColour([{ pigment, amount: 1 }], shelf);
    return Math.log(paintStrengthOf(shelfPaintOf(pigment, shelf)) + 1e-9) - L / 50;
  };
  return [...parts].sort((a, b) => rank(a) - rank(b) || (a.pigment < b.pigment ? -1 : 1));
}
