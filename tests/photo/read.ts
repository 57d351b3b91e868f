import sharp from 'sharp';
import type { Pixels } from '../../src/photo/pixels.ts';

/** Decodes an image file for a test: upright, RGBA, 8 bit, sRGB. */
export async function readPixels(input: string | Buffer, width?: number): Promise<Pixels> {
  let image = sharp(input).rotate().toColourspace('srgb').ensureAlpha();
  if (width !== undefined) image = image.resize(width);
  const { data, info } = await image.raw().toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    data: new Uint8Array(data.buffer, data.byteOffset, data.length),
    space: 'srgb',
  };
}
