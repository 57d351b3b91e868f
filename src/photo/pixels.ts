import type { RgbSpace } from '../colour/rgb.ts';

/** Decoded pixels as the shell passes them: upright, row by row, RGBA, encoded (not linear). */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** width × height × 4 values, 0…255, or 0…65535 in a Uint16Array. */
  readonly data: Uint8ClampedArray | Uint8Array | Uint16Array;
  readonly space: RgbSpace;
}
