import type { Reflectance } from '../colour/grid.ts';
import { spectrum } from '../colour/grid.ts';
import { type Lab, labOfXYZ, xyzOfLab } from '../colour/lab.ts';
import { D65 } from '../colour/observer.ts';
import type { Surface } from '../optics/surface.ts';

/** One pigment of a pile, by volume. */
export interface Part {
  readonly pigment: string;
  readonly parts: number;
}

/**
 * A swatch: composition and observed colour, from a card, an instrument, or a pile at the easel.
 */
export interface PaintedSwatch {
  readonly id: string;
  /** By volume; not all 0. */
  readonly parts: readonly Part[];
  readonly kind: 'photographed' | 'measured';
  /** CIELAB (D65); for a measured swatch, computed from its spectrum. */
  readonly lab: Lab;
  /** Measured reflectance; null if only the colour was observed. */
  readonly R: Reflectance | null;
  /** Standard deviation of each of L*, a*, b*, or of a band as L*; default {@link USUAL_SD}. */
  readonly sd?: number;
  /** Whether it is a pile logged at the easel rather than a swatch painted for calibration. */
  readonly logged?: boolean;
  /** ISO date. */
  readonly date?: string;
}

/**
 * Default standard deviations: of each of L*, a*, b* for photographs with white and grey
 * references, of a band as L* for instruments.
 */
export const USUAL_SD = { photographed: 1, measured: 0.1 } as const;

/**
 * Converts a swatch to the specular mode of a surface by adding or subtracting k1: a 45/0
 * instrument excludes the specular reflection, a sphere may include it.
 * @param seen the mode in which the swatch was observed
 * @returns the same object if nothing changes, else a copy
 */
export function inSpecularMode(
  painted: PaintedSwatch,
  seen: Surface['specular'],
  surface: Surface,
): PaintedSwatch {
  if (seen === surface.specular) return painted;
  const more = surface.specular === 'included' ? surface.k1 : -surface.k1;
  const { R, lab } = painted;
  const [X, Y, Z] = xyzOfLab(lab, D65.white);
  const [wX, wY, wZ] = D65.white;
  return {
    ...painted,
    lab: labOfXYZ(X + more * wX, Y + more * wY, Z + more * wZ, D65.white),
    R: R && spectrum<'R'>(R.map((v) => Math.max(0, v + more))),
  };
}

/** The pigment of a swatch with a single pigment; null for a mixture. */
export function soleOf({ parts }: Pick<PaintedSwatch, 'parts'>): string | null {
  const used = parts.filter((part) => part.parts > 0);
  return used.length === 1 ? used[0]!.pigment : null;
}

/** Pigment and parts of white per part of it; null if the swatch is not a tint in that white. */
export function tintOf(
  { parts }: Pick<PaintedSwatch, 'parts'>,
  white: string,
): { readonly pigment: string; readonly white: number } | null {
  const used = parts.filter((part) => part.parts > 0);
  const other = used.find(({ pigment }) => pigment !== white);
  const tinting = used.find(({ pigment }) => pigment === white);
  if (used.length !== 2 || !other || !tinting) return null;
  return { pigment: other.pigment, white: tinting.parts / other.parts };
}
