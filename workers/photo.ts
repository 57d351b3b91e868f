import { inflateSync } from 'fflate';
import type { Matrix } from '../src/colour/matrix.ts';
import type { RgbSpace } from '../src/colour/rgb.ts';
import type { GatherFault } from '../src/harmony/gather.ts';
import type { Gathered } from '../src/harmony/harmony.ts';
import {
  inspectFile,
  MAX_DECODED_PIXELS,
  MAX_PIXELS,
  type PhotoFault,
  type PhotoRemark,
} from '../src/photo/image-file.ts';
import type { Mask } from '../src/photo/mask.ts';
import type { Pixels } from '../src/photo/pixels.ts';
import { stripP3Profile } from '../src/photo/strip-profile.ts';
import {
  type NeutralFault,
  type WhiteBalance,
  whiteBalanceAt,
} from '../src/photo/white-balance.ts';
import { fail, ok, type Result } from '../src/result.ts';
import type { JobResult } from './job-protocol.ts';
import { downsampleBitmap, gatherDownsampled, warmSecondThread } from './parallel-gathering.ts';
import { canvasOf, hasFrame, readStrips } from './row-strips.ts';

/** Long edges in pixels: of the stored photograph, and of its thumbnail. */
const STORED_EDGE = 2048;
const SMALL_EDGE = 320;

/** Reads a photograph and gathers its harmony. */
export interface PhotoJob {
  readonly file: Blob;
  /** Number of colours; chosen automatically if omitted. */
  readonly colours?: number;
  /** Included pixels; default: all. */
  readonly mask?: Mask;
  /** A known white balance … */
  readonly adapt?: Matrix;
  /** … or a spot to derive it from; only then does the result have a setting. */
  readonly neutral?: NeutralWish;
  /** Also make the copies for the book. */
  readonly keep: boolean;
}

/** The painter's statement: "This was white", or "this was a grey card". */
export interface NeutralWish {
  /** Fractions 0…1 of the photograph's width and height. */
  readonly x: number;
  readonly y: number;
  /** Side of the patch as a fraction of the shorter edge. */
  readonly patch: number;
  /** Reflectance of a grey card, 0…1; also sets the exposure. */
  readonly grey?: number;
}

/** The photograph as stored in the book: JPEG, upright, without EXIF. */
export interface StoredPhoto {
  readonly photo: ArrayBuffer;
  readonly small: ArrayBuffer;
  readonly type: 'image/jpeg';
  readonly width: number;
  readonly height: number;
}

export type PhotoNews =
  | { readonly kind: 'kept'; readonly kept: StoredPhoto }
  | { readonly kind: 'done'; readonly done: number };

export type PhotoResult = Result<
  {
    readonly gathered: Gathered;
    readonly remarks: readonly PhotoRemark[];
    readonly setting: WhiteBalance | null;
    /** Size in pixels of the image that was read. */
    readonly width: number;
    readonly height: number;
  },
  PhotoFault | GatherFault | NeutralFault
>;

/**
 * Decodes a photograph, makes the copies for the book, and gathers its harmony. The result is a
 * fault if the file cannot be read, the spot is unusable or nothing is included.
 */
export async function readPhoto(
  { file, colours, keep, mask, adapt, neutral }: PhotoJob,
  tell: (news: PhotoNews) => void,
): Promise<JobResult<PhotoResult>> {
  const onProgress = (done: number) => tell({ kind: 'done', done });
  warmSecondThread();
  const opened = await openPhoto(file, {
    onKept: keep ? (kept) => tell({ kind: 'kept', kept }) : undefined,
    isAtHand: neutral !== undefined,
  });
  if (!opened.ok) return { value: opened };
  const { bitmap, isWide, space } = opened.value;
  try {
    const { width, height } = bitmap;
    let setting: WhiteBalance | null = null;
    if (neutral) {
      // Read the spot first: its white balance applies to everything else.
      const pixels = await pixelsOf(bitmap, isWide, space);
      const { x, y, grey, patch } = neutral;
      const found = whiteBalanceAt(pixels, x, y, grey, sideOf(pixels, patch));
      if (!found.ok) return { value: found };
      setting = found.value;
    }
    const look = { space, mask, adapt: setting?.matrix ?? adapt };
    const { work, isPerturbed } = await downsampleBitmap(bitmap, isWide, look);
    onProgress(0.6);
    const gathered = await gatherDownsampled(work, {
      colours,
      width,
      height,
      onProgress: (done) => onProgress(0.6 + 0.4 * done),
    });
    if (!gathered.ok) return { value: gathered };
    const remarks: readonly PhotoRemark[] = isPerturbed
      ? [...opened.value.remarks, { code: 'perturbed' }]
      : opened.value.remarks;
    return {
      value: ok({ gathered: gathered.value, remarks, setting, width, height }),
    };
  } finally {
    // Freeing that much memory is slow: do it after returning.
    setTimeout(() => bitmap.close());
  }
}

/**
 * Side of a patch in pixels: odd, and at least 5, so that grain or readback noise does not decide.
 */
export const sideOf = ({ width, height }: Pixels, patch: number): number =>
  Math.max(5, Math.round(Math.min(width, height) * patch)) | 1;

type PixelsResult = Result<
  { readonly pixels: Pixels; readonly remarks: readonly PhotoRemark[] },
  PhotoFault
>;

/** Decodes a photograph and reads all its pixels into memory. */
export async function readPixels(
  file: Blob,
  onKept?: (kept: StoredPhoto) => void,
): Promise<PixelsResult> {
  const opened = await openPhoto(file, { onKept, isAtHand: true });
  if (!opened.ok) return opened;
  const { bitmap, isWide, space, remarks } = opened.value;
  try {
    return ok({ pixels: await pixelsOf(bitmap, isWide, space), remarks });
  } finally {
    bitmap.close();
  }
}

/** All pixels of a bitmap, as RGBA. */
async function pixelsOf(bitmap: ImageBitmap, isWide: boolean, space: RgbSpace): Promise<Pixels> {
  const { width, height } = bitmap;
  const data = new Uint8ClampedArray(width * height * 4);
  let at = 0;
  await readStrips(bitmap, isWide, (strip, rows, order) => {
    data.set(strip.subarray(0, rows * width * 4), at);
    if (order === 'bgrx') rgbaOf(data, at, at + rows * width * 4);
    at += rows * width * 4;
  });
  return { width, height, data, space };
}

/** Converts BGRX to opaque RGBA in place. */
function rgbaOf(data: Uint8ClampedArray, from: number, to: number): void {
  for (let i = from; i < to; i += 4) {
    const blue = data[i]!;
    data[i] = data[i + 2]!;
    data[i + 2] = blue;
    data[i + 3] = 255;
  }
}

interface Opened {
  /** Upright, within the pixel limits; the caller closes it. */
  readonly bitmap: ImageBitmap;
  /** Its colours need a Display P3 canvas. */
  readonly isWide: boolean;
  /** Colour space of its pixel values when read. */
  readonly space: RgbSpace;
  readonly remarks: readonly PhotoRemark[];
}

interface Opening {
  readonly onKept?: ((kept: StoredPhoto) => void) | undefined;
  /** The caller will hold all pixels in memory, not strips of them. */
  readonly isAtHand: boolean;
}

/**
 * Decodes a photograph's first frame. Above 16 megapixels it is downscaled, unless it can be read
 * in strips without a full copy.
 * @returns the image, or a fault if the file cannot be read
 */
async function openPhoto(
  file: Blob,
  { onKept, isAtHand }: Opening,
): Promise<Result<Opened, PhotoFault>> {
  // Inspect the file while the browser decodes on its own thread.
  const decoding = createImageBitmap(file);
  decoding.catch(() => {});
  const bytes = new Uint8Array(await file.arrayBuffer());
  const inspected = inspectFile(bytes, (packed) => unzlib(packed));
  if (!inspected.ok) {
    void decoding.then(
      (bitmap) => bitmap.close(),
      () => {},
    );
    return inspected;
  }
  const { kind, wide, animated } = inspected.value;
  const remarks: PhotoRemark[] = animated ? [{ code: 'several-pictures' }] : [];
  let bitmap: ImageBitmap;
  try {
    bitmap = await decoding;
  } catch (error) {
    if (kind === 'tiff') return fail({ code: 'kind-not-here', kind });
    return fail({ code: 'not-readable', why: (error as Error).message.slice(0, 120) });
  }
  const { width, height } = bitmap;
  const count = width * height;
  if (count > MAX_PIXELS) {
    bitmap.close();
    return fail({ code: 'too-large', megapixels: count / 1e6 });
  }
  if (onKept) onKept(await keptCopy(bitmap));
  // An sRGB-only canvas would clip colours beyond sRGB. Without its profile, the file's own values
  // are read instead.
  const isWide = wide && hasWideCanvas();
  const bare = wide && !isWide ? stripP3Profile(bytes, unzlib) : null;
  if (bare) {
    bitmap.close();
    bitmap = await createImageBitmap(new Blob([bare], { type: file.type }));
  } else if (wide && !isWide) remarks.push({ code: 'srgb-only' });
  if (count > MAX_DECODED_PIXELS && (isAtHand || !hasFrame(bitmap, isWide))) {
    const scale = Math.sqrt(MAX_DECODED_PIXELS / count);
    const small = await createImageBitmap(bitmap, {
      resizeWidth: Math.max(1, Math.floor(width * scale)),
      resizeHeight: Math.max(1, Math.floor(height * scale)),
      resizeQuality: 'medium',
    });
    bitmap.close();
    bitmap = small;
    remarks.push({ code: 'smaller-copy', megapixels: count / 1e6 });
  }
  return ok({ bitmap, isWide, space: isWide || bare ? 'display-p3' : 'srgb', remarks });
}

/** A PNG's profile is a zlib stream: skip its header (2 bytes) and checksum (4 bytes). */
const unzlib = (packed: Uint8Array): Uint8Array => inflateSync(packed.subarray(2, -4));

let wideCanvas: boolean | undefined;
/** Whether this browser supports canvases beyond sRGB. */
function hasWideCanvas(): boolean {
  wideCanvas ??= canvasOf(1, 1, true).context.getImageData(0, 0, 1, 1).colorSpace === 'display-p3';
  return wideCanvas;
}

async function keptCopy(bitmap: ImageBitmap): Promise<StoredPhoto> {
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
