import type { Paint } from '../optics/opaque.ts';
import type { Surface } from '../optics/surface.ts';

/** Meaning of a share: volume of paste, mass of paint, or unknown. Grams need volume. */
export type Basis = 'volume' | 'mass' | 'unknown';

/** One paint that can be mixed. */
export interface ShelfPaint {
  /** Unique name in results: the CSV's name letter for letter, or a built-in pigment's id. */
  readonly pigment: string;
  /** Display name. */
  readonly label: string;
  readonly paint: Paint;
}

/** The paints that can be mixed, and the surface through which they are seen. */
export interface Shelf {
  readonly name: string;
  readonly basis: Basis;
  readonly surface: Surface;
  /** `pigment` of the studio's white; null if there is none. */
  readonly white: string | null;
  readonly paints: readonly ShelfPaint[];
  /** Sentences about assumptions made when the shelf was read. */
  readonly remarks: readonly string[];
}
