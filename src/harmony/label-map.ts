import type { DownsampledImage } from '../photo/downsample.ts';
import type { LabelMap } from './harmony.ts';

/** Longest edge of a label map. */
const EDGE = 512;

/**
 * Resamples labels to screen resolution: each point takes the label at its centre.
 * @param label of each cell of the work image
 * @returns a new map
 */
export function labelMap(work: DownsampledImage, label: Uint8Array): LabelMap {
  const scale = Math.max(1, Math.max(work.width, work.height) / EDGE);
  const width = Math.max(1, Math.round(work.width / scale));
  const height = Math.max(1, Math.round(work.height / scale));
  const data = new Uint8Array(width * height);
  const columns = Int32Array.from({ length: width }, (_, x) =>
    Math.floor(((x + 0.5) / width) * work.width),
  );
  for (let y = 0; y < height; y++) {
    const row = Math.floor(((y + 0.5) / height) * work.height) * work.width;
    for (let x = 0; x < width; x++) data[y * width + x] = label[row + columns[x]!]!;
  }
  return { width, height, data };
}
