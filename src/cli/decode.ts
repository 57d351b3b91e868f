import { readFile } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import sharp from 'sharp';
import {
  colorants,
  EVERY_PIXEL,
  inspectFile,
  MOST_PIXELS,
  type PhotoFault,
} from '../photo/file.ts';
import type { Pixels } from '../photo/pixels.ts';
import { fail, ok, type Result } from '../result.ts';

export interface Decoded {
  readonly pixels: Pixels;
  /** Size of the photograph itself, upright. */
  readonly width: number;
  readonly height: number;
  readonly remarks: readonly string[];
}

/** Reads and decodes a photograph: upright, gamut kept, every pixel up to 16 megapixels. */
export async function decodeFile(path: string): Promise<Result<Decoded, PhotoFault>> {
  let bytes: Buffer;
  try {
    bytes = await readFile(path);
  } catch (error) {
    return fail({ code: 'missing', why: whyMissing(error) });
  }
  return decodeBytes(bytes);
}

export async function decodeBytes(bytes: Uint8Array): Promise<Result<Decoded, PhotoFault>> {
  const inspected = inspectFile(bytes, (packed) => inflateSync(packed));
  if (!inspected.ok) return inspected;
  const { kind, animated } = inspected.value;
  try {
    const facts = await sharp(bytes, { limitInputPixels: false }).metadata();
    if (facts.format === 'heif' && facts.compression !== 'av1') return fail({ code: 'heic' });
    const turned = (facts.orientation ?? 1) > 4;
    const [width, height] = turned ? [facts.height, facts.width] : [facts.width, facts.height];
    const count = width * height;
    if (count > MOST_PIXELS) return fail({ code: 'too-large', megapixels: count / 1e6 });

    const space = facts.icc && isDisplayP3(facts.icc) ? 'display-p3' : 'srgb';
    let image = sharp(bytes, {
      limitInputPixels: false,
      failOn: 'error',
      // A Display P3 file keeps its own numbers: turned into sRGB they would be clipped.
      ignoreIcc: space === 'display-p3',
    }).autoOrient();
    let [w, h] = [width, height];
    if (count > EVERY_PIXEL) {
      const scale = Math.sqrt(EVERY_PIXEL / count);
      [w, h] = [Math.max(1, Math.floor(width * scale)), Math.max(1, Math.floor(height * scale))];
      image = image.resize(w, h, { fit: 'fill', kernel: 'linear' });
    }
    const deep = facts.depth === 'ushort' && !facts.icc;
    image = image.toColourspace(deep ? 'rgb16' : 'srgb').ensureAlpha();
    const { data, info } = await image
      .raw({ depth: deep ? 'ushort' : 'uchar' })
      .toBuffer({ resolveWithObject: true });
    const values = deep
      ? new Uint16Array(data.buffer, data.byteOffset, data.byteLength / 2)
      : new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
    if (info.channels !== 4) throw new Error(`${info.channels} channels`);
    return ok({
      pixels: { width: info.width, height: info.height, data: values, space },
      width,
      height,
      remarks: [
        ...(animated || (kind === 'gif' && (facts.pages ?? 1) > 1)
          ? ['The file holds several pictures; only the first is looked at.']
          : []),
        ...(count > EVERY_PIXEL
          ? [`${Math.round(count / 1e6)} megapixels: looked at in a smaller copy of 16.`]
          : []),
      ],
    });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    if (/truncat|premature end|unexpected end|early EOF|end of (file|stream)/i.test(why))
      return fail({ code: 'truncated' });
    return fail({ code: 'not-readable', why: why.split('\n')[0]!.slice(0, 120) });
  }
}

/** Display P3's colorants, adapted to D50 as profiles hold them. */
function isDisplayP3(icc: Uint8Array): boolean {
  const c = colorants(icc);
  return c !== null && Math.abs(c.red[0] - 0.681) < 0.004 && Math.abs(c.green[1] - 0.6747) < 0.004;
}

function whyMissing(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES') return 'not allowed';
  return error instanceof Error ? error.message : String(error);
}
