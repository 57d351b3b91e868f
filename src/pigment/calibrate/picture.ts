import type { RgbSpace } from '../../colour/rgb.ts';

/**
 * A decoded photograph: upright, row by row, RGBA, encoded (not linear). What the shells hand to
 * everything that looks at photographs has this form; it is stated here because pigments come before them.
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** width × height × 4 values, 0…255, or 0…65535 in a Uint16Array. */
  readonly data: Uint8ClampedArray | Uint8Array | Uint16Array;
  readonly space: RgbSpace;
}
