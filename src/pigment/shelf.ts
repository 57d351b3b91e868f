import type { Paint } from '../optics/opaque.ts';
import type { Surface } from '../optics/surface.ts';

/** What a share means: volume of paste, mass of paint, or not stated. Only volume leads to grams. */
export type Basis = 'volume' | 'mass' | 'unknown';

/** One paint that can go into a pile. */
export interface ShelfPaint {
  /** The name by which results name it: a CSV's name letter for letter, or the id of our own shelf. */
  readonly pigment: string;
  /** What a person reads. */
  readonly label: string;
  readonly paint: Paint;
}

/** The pigments that a studio has, and how their surface is seen. */
export interface Shelf {
  readonly name: string;
  readonly basis: Basis;
  readonly surface: Surface;
  /** `pigment` of the studio's white; null where the shelf has none. */
  readonly white: string | null;
  readonly paints: readonly ShelfPaint[];
  /** Plain sentences about what was assumed when it was read. */
  readonly remarks: readonly string[];
}
