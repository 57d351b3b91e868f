import type { Reflectance } from '../../colour/grid.ts';
import { spectrum } from '../../colour/grid.ts';
import { type Lab, labOfXYZ, xyzOfLab } from '../../colour/lab.ts';
import { D65 } from '../../colour/observer.ts';
import type { Surface } from '../../optics/surface.ts';

/** One pigment of a pile, by volume. */
export interface Part {
  readonly pigment: string;
  readonly parts: number;
}

/** What was painted and how it looked: from a card, a measuring instrument, or a pile at the easel. */
export interface Painted {
  readonly id: string;
  /** By volume; not all 0. */
  readonly parts: readonly Part[];
  readonly kind: 'photographed' | 'measured';
  /** Its colour under D65; of a measured swatch, that of its spectrum. */
  readonly lab: Lab;
  /** Measured reflectance; null where only the colour was seen. */
  readonly R: Reflectance | null;
  /** Standard deviation: of each of L*, a*, b*, or of a band as lightness. Left out: the kind's own. */
  readonly sd?: number;
  /** A pile logged at the easel rather than a swatch brushed out for this. */
  readonly logged?: boolean;
  /** ISO day. */
  readonly date?: string;
}

/** Photographs beside a white and a grey are this good, each of L*, a*, b*; instruments this, a band. */
export const USUAL_SD = { photographed: 1, measured: 0.1 } as const;

/**
 * A swatch as it would have been seen with the shelf's own surface, where it was seen with or without
 * the reflection of the gloss: a 45/0 instrument sees none of it, a sphere all.
 */
export function seenAs(painted: Painted, seen: Surface['specular'], surface: Surface): Painted {
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

/** A swatch of one pigment alone, or null. */
export function soleOf({ parts }: Pick<Painted, 'parts'>): string | null {
  const used = parts.filter((part) => part.parts > 0);
  return used.length === 1 ? used[0]!.pigment : null;
}

/** The pigment and the parts of white to one of it; null where it is no tint in that white. */
export function tintOf(
  { parts }: Pick<Painted, 'parts'>,
  white: string,
): { readonly pigment: string; readonly white: number } | null {
  const used = parts.filter((part) => part.parts > 0);
  const other = used.find(({ pigment }) => pigment !== white);
  const tinting = used.find(({ pigment }) => pigment === white);
  if (used.length !== 2 || !other || !tinting) return null;
  return { pigment: other.pigment, white: tinting.parts / other.parts };
}
