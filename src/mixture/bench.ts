import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { volumesIn } from './laid.ts';
import { weakened } from './letdown.ts';
import type { LetDown, Mixture, Part } from './mixture.ts';

/** A mixture as it stands on the bench: its piles, let-downs in piles of their own. */
export interface Bench {
  /** The shelf, and each let-down as a paint of its own beside its paints. */
  readonly shelf: Shelf;
  /** Whole parts; a let-down by its name on that shelf. */
  readonly parts: readonly Part[];
  readonly letDowns: readonly (LetDown & { readonly name: string })[];
  /** The pigments themselves by volume, what the let-downs bring counted in; need not be whole. */
  readonly pigments: readonly Part[];
  readonly lab: Lab;
  /** CIEDE2000 to the target. */
  readonly deltaE00: number;
}

const nameOf = (pigment: string): string => `${pigment} let down`;

/** @throws RangeError when the shelf lacks a pigment that is let down */
export function benchOf(mixture: Mixture, shelf: Shelf): Bench {
  const { letDown } = mixture;
  if (!letDown) {
    const { parts, partsLab: lab, partsDeltaE00: deltaE00 } = mixture;
    return { shelf, parts, letDowns: [], pigments: parts, lab, deltaE00 };
  }
  const { letDowns, lab, deltaE00 } = letDown;
  const paints = letDowns.map(({ pigment, white, whiteParts }) => ({
    pigment: nameOf(pigment),
    label: nameOf(shelf.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment),
    paint: weakened(pigment, white, whiteParts, shelf),
  }));
  return {
    shelf: { ...shelf, paints: [...shelf.paints, ...paints] },
    parts: letDown.parts.map(({ pigment, parts, letDown: isLetDown }) => ({
      pigment: isLetDown ? nameOf(pigment) : pigment,
      parts,
    })),
    letDowns: letDowns.map((one) => ({ ...one, name: nameOf(one.pigment) })),
    pigments: volumesIn(mixture),
    lab,
    deltaE00,
  };
}
