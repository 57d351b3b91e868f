import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { letDownPaint } from './let-down.ts';
import type { LetDown, Mixture, MixturePart } from './mixture-types.ts';
import { mixtureVolumesOf } from './pile-parts.ts';

/** A mixture in measurable whole parts, with each let-down as a separate paint. */
export interface MeasuredRecipe {
  /** The shelf plus one paint per let-down. */
  readonly shelf: Shelf;
  /** Whole parts; a let-down by its name on `shelf`. */
  readonly parts: readonly MixturePart[];
  readonly letDowns: readonly (LetDown & { readonly name: string })[];
  /** Pigments by volume with let-downs resolved; not necessarily whole. */
  readonly pigments: readonly MixturePart[];
  readonly lab: Lab;
  /** CIEDE2000 to the target. */
  readonly deltaE00: number;
}

const nameOf = (pigment: string): string => `${pigment} let down`;

/**
 * Lays out a mixture's whole parts.
 * @throws RangeError when the shelf lacks a let-down's pigment
 */
export function measuredRecipeOf(mixture: Mixture, shelf: Shelf): MeasuredRecipe {
  const { letDown } = mixture;
  if (!letDown) {
    const { parts, partsLab: lab, partsDeltaE00: deltaE00 } = mixture;
    return { shelf, parts, letDowns: [], pigments: parts, lab, deltaE00 };
  }
  const { letDowns, lab, deltaE00 } = letDown;
  const paints = letDowns.map(({ pigment, white, whiteParts }) => ({
    pigment: nameOf(pigment),
    label: nameOf(shelf.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment),
    paint: letDownPaint(pigment, white, whiteParts, shelf),
  }));
  return {
    shelf: { ...shelf, paints: [...shelf.paints, ...paints] },
    parts: letDown.parts.map(({ pigment, parts, letDown: isLetDown }) => ({
      pigment: isLetDown ? nameOf(pigment) : pigment,
      parts,
    })),
    letDowns: letDowns.map((one) => ({ ...one, name: nameOf(one.pigment) })),
    pigments: mixtureVolumesOf(mixture),
    lab,
    deltaE00,
  };
}
