import type { Span } from '../src/photo/average.ts';
import type { Pixels } from '../src/photo/pixels.ts';

/** Rows of pixels, some at a time: what was read is still in the processor's cache when it is summed. */
const ROWS = 64;

export type Strip = (data: Pixels['data'], rows: number, order: 'rgba' | 'bgrx') => void;

/**
 * Reads a bitmap from the top, never more than a strip of it at a time. Where the browser shows its own
 * memory as a frame of opaque sRGB, that is copied; elsewhere a canvas of one strip is read back.
 * @param each may not keep its data
 * @returns whether this browser perturbs what it lets a page read
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
    // What is see-through must not lie over the strip before.
    context.clearRect(0, 0, width, rows);
    context.drawImage(bitmap, 0, -y);
    each(context.getImageData(0, 0, width, rows).data, rows, 'rgba');
  }
  canvas.width = 0;
  return readbackIsPerturbed();
}

/** A bitmap's own memory, to be closed, where it is opaque sRGB in four bytes a pixel; null where it is not. */
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

/** Whether {@link frameOf} has one of it, so that it is read with no more memory than a strip. */
export function isShown(bitmap: ImageBitmap, wide: boolean): boolean {
  const frame = frameOf(bitmap, wide);
  frame?.close();
  return frame !== null;
}

/** Copies rows of a frame of {@link frameOf}, from the top, some at a time. */
export async function readFrame(frame: VideoFrame, { from, to }: Span, each: Strip): Promise<void> {
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

export function canvasOf(width: number, height: number, wide: boolean) {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', {
    colorSpace: wide ? 'display-p3' : 'srgb',
    willReadFrequently: true,
  });
  if (!context) throw new Error('this browser gives no canvas to a worker');
  return { canvas, context };
}

/** Some browsers add noise to what is read back from a canvas; a known fill shows it. */
function readbackIsPerturbed(): boolean {
  const { context } = canvasOf(16, 16, false);
  context.fillStyle = 'rgb(121, 87, 43)';
  context.fillRect(0, 0, 16, 16);
  const { data } = context.getImageData(0, 0, 16, 16);
  return data.some((value, i) => value !== [121, 87, 43, 255][i & 3]);
}
