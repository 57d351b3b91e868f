import type { WorkImage } from '../photo/work.ts';
import type { LabelMap } from './harmony.ts';

/** Longest edge of a label map. */
const EDGE = 512;
/** Nothing was looked at here. */
export const NOWHERE = 255;

/** The label map at screen resolution: each cell the colour that holds most of it. */
export function labelMap(work: WorkImage, label: Uint8Array): LabelMap {
  const scale = Math.max(1, Math.max(work.width, work.height) / EDGE);
  const width = Math.max(1, Math.round(work.width / scale));
  const height = Math.max(1, Math.round(work.height / scale));
  const data = new Uint8Array(width * height).fill(NOWHERE);
  const votes = new Uint32Array(256);
  for (let y = 0; y < height; y++) {
    const top = Math.floor((y * work.height) / height);
    const bottom = Math.max(top + 1, Math.floor(((y + 1) * work.height) / height));
    for (let x = 0; x < width; x++) {
      const left = Math.floor((x * work.width) / width);
      const right = Math.max(left + 1, Math.floor(((x + 1) * work.width) / width));
      let best = NOWHERE;
      let most = 0;
      for (let v = top; v < bottom; v++)
        for (let u = left; u < right; u++) {
          const cell = v * work.width + u;
          const colour = label[cell]!;
          if (colour === NOWHERE || work.seen[cell] === 0) continue;
          votes[colour]! += work.seen[cell]!;
          if (votes[colour]! > most || (votes[colour] === most && colour < best)) {
            most = votes[colour]!;
            best = colour;
          }
        }
      for (let v = top; v < bottom; v++)
        for (let u = left; u < right; u++) votes[label[v * work.width + u]!] = 0;
      data[y * width + x] = best;
    }
  }
  return { width, height, data };
}
