import type { Pixels } from './pixels.ts';

/**
 * Histogram of encoded values: 256 bins per channel at any bit depth; transparent pixels are
 * excluded.
 */
interface ToneHistogram {
  readonly red: Uint32Array;
  readonly green: Uint32Array;
  readonly blue: Uint32Array;
  readonly pixels: number;
  /**
   * Shares, 0…1: pixels with any channel at its maximum, and pixels with all three channels at 0.
   */
  readonly burnt: number;
  readonly black: number;
}

/** Counts the encoded values of every pixel, which shows clipping before white balance. */
export function toneHistogram({ data }: Pixels): ToneHistogram {
  const red = new Uint32Array(256);
  const green = new Uint32Array(256);
  const blue = new Uint32Array(256);
  const shift = data instanceof Uint16Array ? 8 : 0;
  let pixels = 0;
  let burnt = 0;
  let black = 0;
  for (let at = 0; at < data.length; at += 4) {
    if (data[at + 3]! >> shift < 128) continue;
    const r = data[at]! >> shift;
    const g = data[at + 1]! >> shift;
    const b = data[at + 2]! >> shift;
    red[r]!++;
    green[g]!++;
    blue[b]!++;
    pixels++;
    if (r === 255 || g === 255 || b === 255) burnt++;
    else if (r + g + b === 0) black++;
  }
  const share = (n: number) => (pixels ? n / pixels : 0);
  return { red, green, blue, pixels, burnt: share(burnt), black: share(black) };
}
