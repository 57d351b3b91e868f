import sharp from 'sharp';
import type { Pixels } from '../../src/photo/pixels.ts';

/** A rendered photograph as a file. */
export async function jpegOf({ width, height, data }: Pixels, quality = 92): Promise<Buffer> {
  return sharp(data, { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .jpeg({ quality })
    .toBuffer();
}
