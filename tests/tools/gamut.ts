import { crc32 } from 'node:zlib';
import sharp from 'sharp';

/**
 * A PNG whose numbers are Display P3's, so that it can hold colours beyond sRGB. The profile is taken
 * from a picture that sharp converted, and set into one whose numbers it left alone.
 * @param rgb width × height × 3 values, 0…255, encoded as Display P3
 */
export async function displayP3Png(
  rgb: Uint8Array,
  width: number,
  height: number,
): Promise<Buffer> {
  const raw = { raw: { width, height, channels: 3 as const } };
  const profiled = await sharp(rgb, raw).withIccProfile('p3').png().toBuffer();
  const plain = await sharp(rgb, raw).png().toBuffer();
  const at = profiled.indexOf('iCCP') - 4;
  const chunk = profiled.subarray(at, at + 12 + profiled.readUInt32BE(at));
  if (crc32(chunk.subarray(4, -4)) !== chunk.readUInt32BE(chunk.length - 4))
    throw new Error('the profile was cut wrongly');
  // After the signature and the header, which is 25 bytes long.
  return Buffer.concat([plain.subarray(0, 33), chunk, plain.subarray(33)]);
}
