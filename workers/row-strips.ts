import type { RowRange } from '../src/photo/area-average.ts';
import type { Pixels } from '../src/photo/pixels.ts';

/** Rows of pixels per strip: few enough to stay in the processor's cache until they are summed. */
const ROWS = 64;

/** Receives a strip of pixels. The buffer is reused: copy what you keep. */
type Strip = (data: Pixels['data'], rows: number, order: 'rgba' | 'bgrx') => void;

/**
 * Reads a bitmap from the top, strip by strip. If the browser exposes the bitmap's memory as an
 * opaque sRGB frame, copies from that; otherwise reads back a canvas of one strip.
 * @param each must not keep its data
 * @returns whether this browser adds noise to canvas readback
 */
export async function readStrips(
  bitmap: ImageBitmap,
  wide: boolean,
  each: Strip,
): Promise<boolean> {
  const frame = frameOf(bitmap, wide);
  if (frame) {
    try {
      await readFrame(frame, { from: 0, to: bitmap.height }, each);
    } finally {
      frame.close();
    }
    return false;
  }
  const { width, height } = bitmap;
  const { canvas, context } = canvasOf(width, Math.min(ROWS, height), wide);
  for (let y = 0; y < height; y += ROWS) {
    const rows = Math.min(ROWS, height - y);
    // Clear first: transparent pixels must not show the previous strip.
    context.clearRect(0, 0, width, rows);
    context.drawImage(bitmap, 0, -y);
    each(context.getImageData(0, 0, width, rows).data, rows, 'rgba');
  }
  canvas.width = 0;
  return readbackIsPerturbed();
}

/**
 * A frame on a bitmap's own memory if it is opaque sRGB with four bytes per pixel, otherwise null.
 * The caller closes it.
 */
export function frameOf(bitmap: ImageBitmap, wide: boolean): VideoFrame | null {
  if (wide || typeof VideoFrame === 'undefined') return null;
  let frame: VideoFrame;
  try {
    frame = new VideoFrame(bitmap, { timestamp: 0 });
  } catch {
    return null;
  }
  const { format, colorSpace, codedWidth, codedHeight } = frame;
  const isPlain =
    (format === 'BGRX' || format === 'RGBX') &&
    codedWidth === bitmap.width &&
    codedHeight === bitmap.height &&
    colorSpace.primaries === 'bt709' &&
    colorSpace.transfer === 'iec61966-2-1';
  if (isPlain) return frame;
  frame.close();
  return null;
}

/** Whether {@link frameOf} returns a frame, so that reading needs no more memory than a strip. */
export function hasFrame(bitmap: ImageBitmap, wide: boolean): boolean {
  const frame = frameOf(bitmap, wide);
  frame?.close();
  return frame !== null;
}

/** Copies rows of a frame from {@link frameOf}, from the top, strip by strip. */
export async function readFrame(
  frame: VideoFrame,
  { from, to }: RowRange,
  each: Strip,
): Promise<void> {
  const width = frame.codedWidth;
  const data = new Uint8Array(width * 4 * Math.min(ROWS, to - from));
  for (let y = from; y < to; y += ROWS) {
    const rows = Math.min(ROWS, to - y);
    await frame.copyTo(data, {
      rect: { x: 0, y, width, height: rows },
      layout: [{ offset: 0, stride: width * 4 }],
    });
    each(data, rows, frame.format === 'BGRX' ? 'bgrx' : 'rgba');
  }
}

/**
 * An offscreen canvas for readback.
 * @throws Error if the browser offers no 2D context
 */
export function canvasOf(width: number, height: number, wide: boolean) {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', {
    colorSpace: wide ? 'display-p3' : 'srgb',
    willReadFrequently: true,
  });
  if (!context) throw new Error('this browser gives no canvas to a worker');
  return { canvas, context };
}

/** Tests whether the browser adds noise to canvas readback, with a known fill. */
function readbackIsPerturbed(): boolean {
  const { context } = canvasOf(16, 16, false);
  context.fillStyle = 'rgb(121, 87, 43)';
  context.fillRect(0, 0, 16, 16);
  const { data } = context.getImageData(0, 0, 16, 16);
  return data.some((value, i) => value !== [121, 87, 43, 255][i & 3]);
}
