import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';

/** Colorants of a profile, X, Y, Z adapted to D50, each as s15Fixed16 numbers hold them. */
type Colorants = Readonly<Record<'rXYZ' | 'gXYZ' | 'bXYZ', readonly [number, number, number]>>;

/** A gamut with Adobe RGB (1998)'s primaries, the values of its published specification, and sRGB's curve. */
export const BROAD: Colorants = {
  rXYZ: [0.60974, 0.31111, 0.01947],
  gXYZ: [0.20528, 0.62567, 0.06087],
  bXYZ: [0.14919, 0.06322, 0.74457],
};

/** Display P3's profile as sharp brings it, with other colorants where they are given. */
async function profile(colorants?: Colorants): Promise<Buffer> {
  const dot = sharp({ create: { width: 1, height: 1, channels: 3, background: '#808080' } });
  const { icc } = await sharp(await dot.withIccProfile('p3').png().toBuffer()).metadata();
  const bytes = Buffer.from(icc!);
  for (let tag = 0; tag < bytes.readUInt32BE(128); tag++) {
    const at = 132 + tag * 12;
    const values = colorants?.[bytes.toString('latin1', at, at + 4) as keyof Colorants];
    for (const [k, v] of (values ?? []).entries())
      bytes.writeInt32BE(Math.round(v * 65536), bytes.readUInt32BE(at + 4) + 8 + 4 * k);
  }
  return bytes;
}

/**
 * A PNG whose numbers are those of a gamut wider than sRGB: they are written as they stand, and the
 * profile is set in beside them.
 * @param rgb width × height × 3 values, 0…255, encoded
 * @param colorants the gamut; Display P3 without it
 */
export async function widePng(
  rgb: Uint8Array,
  width: number,
  height: number,
  colorants?: Colorants,
): Promise<Buffer> {
  const plain = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
  const body = Buffer.concat([
    Buffer.from('wide\0\0', 'latin1'),
    deflateSync(await profile(colorants)),
  ]);
  const chunk = Buffer.alloc(12 + body.length);
  chunk.writeUInt32BE(body.length, 0);
  chunk.write('iCCP', 4, 'latin1');
  body.copy(chunk, 8);
  chunk.writeUInt32BE(crc32(chunk.subarray(4, -4)), chunk.length - 4);
  // After the signature and the header, which is 25 bytes long.
  return Buffer.concat([plain.subarray(0, 33), chunk, plain.subarray(33)]);
}
