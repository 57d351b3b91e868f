import type { Pixels } from '../../src/photo/pixels.ts';

/** A picture from a function of x and y that gives encoded r, g, b and perhaps alpha, 0…255. */
export function picture(
  width: number,
  height: number,
  paint: (x: number, y: number) => readonly number[],
): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [r, g, b, alpha = 255] = paint(x, y);
      const at = (y * width + x) * 4;
      data[at] = r!;
      data[at + 1] = g!;
      data[at + 2] = b!;
      data[at + 3] = alpha;
    }
  return { width, height, data, space: 'srgb' };
}
