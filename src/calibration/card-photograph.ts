import type { RgbSpace } from '../colour/rgb.ts';

/**
 * A decoded photograph: upright, row by row, RGBA, encoded (not linear). Structurally equal to the
 * pixels that shells pass to the photo functions; declared here because src/pigment must not import
 * src/photo.
 */
export interface CardPhotograph {
  readonly width: number;
  readonly height: number;
  /** width × height × 4 values, 0…255, or 0…65535 in a Uint16Array. */
  readonly data: Uint8ClampedArray | Uint8Array | Uint16Array;
  readonly space: RgbSpace;
}
