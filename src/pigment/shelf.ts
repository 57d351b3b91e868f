import type { Paint } from '../optics/opaque.ts';
import type { Surface } from '../optics/surface.ts';
import type { GridRemark } from './import/resample.ts';

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

/** What was assumed when a shelf was read, and what cannot be mixed. */
export type ShelfRemark =
  | GridRemark
  | { readonly code: 'no-surface' }
  | { readonly code: 'no-white' }
  | { readonly code: 'one-paint' }
  | { readonly code: 'parts-not-volumes' }
  | { readonly code: 'used-up'; readonly label: string }
  | { readonly code: 'no-curve'; readonly label: string }
  | { readonly code: 'white-not-marked' }
  | { readonly code: 'white-not-mixable' };

/** The paints that can be mixed, and the surface through which they are seen. */
export interface Shelf {
  readonly name: string;
  readonly basis: Basis;
  readonly surface: Surface;
  /** `pigment` of the studio's white; null if there is none. */
  readonly white: string | null;
  readonly paints: readonly ShelfPaint[];
  readonly remarks: readonly ShelfRemark[];
}
