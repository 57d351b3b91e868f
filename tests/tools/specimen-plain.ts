import { cluster, histogram } from '../../src/harmony/cluster.ts';
import { localColour, tally } from '../../src/harmony/measure.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { workImage } from '../../src/photo/work.ts';
import type { Found } from './specimen-score.ts';

/** Plain k-means of the same pixels in OKLab: what any general clustering reaches. */
export function plainKmeans(pixels: Pixels, k: number): Found[] {
  const work = workImage(pixels)!;
  const bins = histogram(work, work.seen);
  const clusters = cluster(bins, k, 1, 60);
  const label = Uint8Array.from(bins.ofCell, (bin) => clusters.ofBin[bin]!);
  return tally(work, label, k).map((part) => ({
    lab: localColour(part),
    share: part.weight / work.pixels,
  }));
}
