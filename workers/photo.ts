import { inflateSync } from 'fflate';
import type { Matrix } from '../src/colour/matrix.ts';
import { type GatherFault, gather } from '../src/harmony/gather.ts';
import type { Gathered } from '../src/harmony/harmony.ts';
import { withoutP3 } from '../src/photo/bare.ts';
import { EVERY_PIXEL, inspectFile, MOST_PIXELS, type PhotoFault } from '../src/photo/file.ts';
import type { Mask } from '../src/photo/mask.ts';
import { type NeutralFault, neutralAt, type Setting } from '../src/photo/neutral.ts';
import type { Pixels } from '../src/photo/pixels.ts';
import { fail, ok, type Result } from '../src/result.ts';
import type { Handed } from './jobs.ts';

/** Long edge of the stored photograph and of its picture in lists, in pixels. */
const STORED_EDGE = 2048;
const SMALL_EDGE = 320;

export interface PhotoJob {
  readonly file: Blob;
  /** Without it the photograph decides. */
  readonly colours?: number;
  /** What is looked at; left out, everything. */
  readonly mask?: Mask;
  /** A light that is known already … */
  readonly adapt?: Matrix;
  /** … or a spot to set it by: only then the result has a setting. */
  readonly neutral?: NeutralWish;
  /** Whether the picture for the book is wanted as well. */
  readonly keep: boolean;
}

/** "This was white", or "this was a grey card". */
export interface NeutralWish {
  /** 0…1 of the photograph's width and height. */
  readonly x: number;
  readonly y: number;
  /** Side of the patch as a share of the shorter edge. */
  readonly patch: number;
  /** Reflectance of a grey card, 0…1: sets the exposure as well. */
  readonly grey?: number;
}

/** The photograph as the book keeps it: JPEG, upright, without EXIF. */
export interface KeptPhoto {
  readonly photo: ArrayBuffer;
  readonly small: ArrayBuffer;
  readonly type: 'image/jpeg';
  readonly width: number;
  readonly height: number;
}

export type PhotoNews =
  | { readonly kind: 'kept'; readonly kept: KeptPhoto }
  | { readonly kind: 'done'; readonly done: number };

export type PhotoResult = Result<
  {
    readonly gathered: Gathered;
    readonly remarks: readonly string[];
    readonly setting: Setting | null;
    /** Size of what was read. */
    readonly width: number;
    readonly height: number;
  },
  PhotoFault | GatherFault | NeutralFault
>;

/** Decodes a photograph, makes the copy for the book, and gathers its harmony. */
export async function readPhoto(
  { file, colours, keep, mask, adapt, neutral }: PhotoJob,
  tell: (news: PhotoNews) => void,
): Promise<Handed<PhotoResult>> {
  const read = await readPixels(file, keep ? (kept) => tell({ kind: 'kept', kept }) : undefined);
  if (!read.ok) return { value: read };
  const { pixels, remarks } = read.value;
  const setting =
    neutral && neutralAt(pixels, neutral.x, neutral.y, neutral.grey, sideOf(pixels, neutral.patch));
  if (setting && !setting.ok) return { value: setting };
  const gathered = gather(pixels, {
    colours,
    mask,
    adapt: setting?.value.matrix ?? adapt,
    onProgress: (done) => tell({ kind: 'done', done }),
  });
  if (!gathered.ok) return { value: gathered };
  return {
    value: ok({
      gathered: gathered.value,
      remarks: [...remarks, ...gathered.value.remarks],
      setting: setting?.value ?? null,
      width: pixels.width,
      height: pixels.height,
    }),
  };
}

/** Side of a patch in pixels: odd, and never so small that grain or a perturbed readback decides. */
export const sideOf = ({ width, height }: Pixels, patch: number): number =>
  Math.max(5, Math.round(Math.min(width, height) * patch)) | 1;

export type Read = Result<
  { readonly pixels: Pixels; readonly remarks: readonly string[] },
  PhotoFault
>;

/** Decodes a photograph's first frame, upright, and reads its pixels back: all of them up to 16 megapixels. */
export async function readPixels(file: Blob, onKept?: (kept: KeptPhoto) => void): Promise<Read> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const inspected = inspectFile(bytes, (packed) => unzlib(packed));
  if (!inspected.ok) return inspected;
  const { kind, wide, animated } = inspected.value;
  const remarks = animated ? ['The file holds several pictures; only the first is looked at.'] : [];

  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch (error) {
    if (kind === 'tiff') return fail({ code: 'kind-not-here', kind });
    return fail({ code: 'not-readable', why: (error as Error).message.slice(0, 120) });
  }
  try {
    const { width, height } = bitmap;
    const count = width * height;
    if (count > MOST_PIXELS) return fail({ code: 'too-large', megapixels: count / 1e6 });
    if (onKept) onKept(await keptCopy(bitmap));
    let source = file;
    // Where a canvas knows sRGB alone, it would clip what lies beyond: the file's own numbers do not.
    const bare = wide && !hasWideCanvas() ? withoutP3(bytes, unzlib) : null;
    if (bare) {
      source = new Blob([bare], { type: file.type });
      bitmap.close();
      bitmap = await createImageBitmap(source);
    } else if (wide && !hasWideCanvas())
      remarks.push(
        'This browser reads colours no further than sRGB: the brightest of this photograph are a little duller here.',
      );
    if (count > EVERY_PIXEL) {
      const scale = Math.sqrt(EVERY_PIXEL / count);
      const small = await createImageBitmap(source, {
        resizeWidth: Math.max(1, Math.floor(width * scale)),
        resizeHeight: Math.max(1, Math.floor(height * scale)),
        resizeQuality: 'medium',
      });
      bitmap.close();
      bitmap = small;
      remarks.push(`${Math.round(count / 1e6)} megapixels: looked at in a smaller copy of 16.`);
    }
    const pixels = readBack(bitmap, bare ? 'bare' : wide);
    if (readbackIsPerturbed())
      remarks.push(
        'This browser alters the pixels that a page may read. The colours can be off by a trace.',
      );
    return ok({ pixels, remarks });
  } finally {
    bitmap.close();
  }
}

/** A PNG's profile is a zlib stream; its two bytes of header and four of checksum are left out. */
const unzlib = (packed: Uint8Array): Uint8Array => inflateSync(packed.subarray(2, -4));

function canvasOf(width: number, height: number, wide: boolean) {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', {
    colorSpace: wide ? 'display-p3' : 'srgb',
    willReadFrequently: true,
  });
  if (!context) throw new Error('this browser gives no canvas to a worker');
  return { canvas, context };
}

/**
 * The pixels of a bitmap. A Display P3 canvas only where the file's profile is wider than sRGB; `bare`
 * numbers are Display P3's, though neither the bitmap nor the canvas knows.
 */
function readBack(bitmap: ImageBitmap, wide: boolean | 'bare'): Pixels {
  const { width, height } = bitmap;
  const { canvas, context } = canvasOf(width, height, wide === true);
  context.drawImage(bitmap, 0, 0);
  const { data, colorSpace } = context.getImageData(0, 0, width, height);
  canvas.width = 0;
  // Browsers without wide canvases do not say what they have: it is sRGB.
  const space = wide === 'bare' ? 'display-p3' : (colorSpace ?? 'srgb');
  return { width, height, data, space };
}

let wideCanvas: boolean | undefined;
/** Whether this browser has canvases beyond sRGB. */
function hasWideCanvas(): boolean {
  wideCanvas ??= canvasOf(1, 1, true).context.getImageData(0, 0, 1, 1).colorSpace === 'display-p3';
  return wideCanvas;
}

/** Some browsers add noise to what is read back; a known fill shows it. */
function readbackIsPerturbed(): boolean {
  const { context } = canvasOf(16, 16, false);
  context.fillStyle = 'rgb(121, 87, 43)';
  context.fillRect(0, 0, 16, 16);
  const { data } = context.getImageData(0, 0, 16, 16);
  return data.some((value, i) => value !== [121, 87, 43, 255][i & 3]);
}

async function keptCopy(bitmap: ImageBitmap): Promise<KeptPhoto> {
  const [photo, small] = await Promise.all([
    asJpeg(bitmap, STORED_EDGE, 0.9),
    asJpeg(bitmap, SMALL_EDGE, 0.8),
  ]);
  return {
    photo: photo.bytes,
    small: small.bytes,
    type: 'image/jpeg',
    width: photo.width,
    height: photo.height,
  };
}

async function asJpeg(bitmap: ImageBitmap, edge: number, quality: number) {
  const scale = Math.min(1, edge / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * scale));
  const height = Math.max(1, Math.round(bitmap.height * scale));
  const { canvas, context } = canvasOf(width, height, false);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
  return { bytes: await blob.arrayBuffer(), width, height };
}
