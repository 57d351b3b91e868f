import { readFile } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import sharp from 'sharp';
import { isP3, isWide } from '../photo/icc-profile.ts';
import {
  inspectFile,
  MAX_DECODED_PIXELS,
  MAX_PIXELS,
  type PhotoFault,
  type PhotoRemark,
} from '../photo/image-file.ts';
import type { Pixels } from '../photo/pixels.ts';
import { fail, ok, type Result } from '../result.ts';

interface Decoded {
  readonly pixels: Pixels;
  /** Size of the photograph itself, upright. */
  readonly width: number;
  readonly height: number;
  readonly remarks: readonly PhotoRemark[];
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
    if (count > MAX_PIXELS) return fail({ code: 'too-large', megapixels: count / 1e6 });

    const gamut = gamutOf(facts.icc);
    let image = sharp(bytes, {
      limitInputPixels: false,
      failOn: 'error',
      // A Display P3 file keeps its own numbers: turned into sRGB they would be clipped.
      ignoreIcc: gamut === 'display-p3',
    }).autoOrient();
    let [w, h] = [width, height];
    if (count > MAX_DECODED_PIXELS) {
      const scale = Math.sqrt(MAX_DECODED_PIXELS / count);
      [w, h] = [Math.max(1, Math.floor(width * scale)), Math.max(1, Math.floor(height * scale))];
      image = image.resize(w, h, { fit: 'fill', kernel: 'linear' });
    }
    const sixteen = facts.depth === 'ushort' && (!facts.icc || gamut === 'wider');
    if (gamut === 'wider')
      image = image.pipelineColourspace('rgb16').toColourspace('rgb16').withIccProfile('p3');
    else image = image.toColourspace(sixteen ? 'rgb16' : 'srgb');
    const asShorts = sixteen || gamut === 'wider';
    const { data, info } = await image
      .ensureAlpha()
      .raw({ depth: asShorts ? 'ushort' : 'uchar' })
      .toBuffer({ resolveWithObject: true });
    if (info.channels !== 4) throw new Error(`${info.channels} channels`);
    const values = asShorts
      ? new Uint16Array(data.buffer, data.byteOffset, data.byteLength / 2)
      : new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
    return ok({
      pixels: {
        width: info.width,
        height: info.height,
        data: gamut === 'wider' && !sixteen ? eightBit(values) : values,
        space: gamut === 'srgb' ? 'srgb' : 'display-p3',
      },
      width,
      height,
      remarks: [
        ...(animated || (kind === 'gif' && (facts.pages ?? 1) > 1)
          ? [{ code: 'several-pictures' } as const]
          : []),
        ...(count > MAX_DECODED_PIXELS
          ? [{ code: 'smaller-copy', megapixels: count / 1e6 } as const]
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

/** What an embedded profile reaches: sRGB (or none is there), Display P3 itself, or beyond sRGB in its own way. */
function gamutOf(icc: Uint8Array | undefined): 'srgb' | 'display-p3' | 'wider' {
  if (!icc || !isWide(icc)) return 'srgb';
  return isP3(icc) ? 'display-p3' : 'wider';
}

/** libvips widens 8 bits to 16 by 256. */
const eightBit = (values: Uint8Array | Uint16Array): Uint8Array =>
  Uint8Array.from(values, (v) => Math.min(255, Math.round(v / 256)));

function whyMissing(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES') return 'not allowed';
  return error instanceof Error ? error.message : String(error);
}
