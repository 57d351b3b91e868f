import type { Pixels } from './pixels.ts';

/** How often each encoded value occurs, 256 steps whatever the depth; see-through pixels left out. */
export interface ToneHistogram {
  readonly red: Uint32Array;
  readonly green: Uint32Array;
  readonly blue: Uint32Array;
  readonly pixels: number;
  /** Share of pixels with a channel at its upper end, and with all three at zero. */
  readonly burnt: number;
  readonly black: number;
}

/** Counts the encoded values of every pixel: shows what was clipped, before any light is set right. */
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
