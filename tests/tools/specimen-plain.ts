import { colourHistogram, weightedKMeans } from '../../src/harmony/cluster.ts';
import { colourHistograms, localColour } from '../../src/harmony/measure.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { downsampled } from '../../src/photo/work.ts';
import type { Found } from './specimen-score.ts';

/** Plain k-means of the same pixels in OKLab: what any general clustering reaches. */
export function plainKmeans(pixels: Pixels, k: number): Found[] {
  const work = downsampled(pixels)!;
  const bins = colourHistogram(work, work.pixelCounts);
  const clusters = weightedKMeans(bins, k, 1, 60);
  const label = Uint8Array.from(bins.ofCell, (bin) => clusters.ofBin[bin]!);
  return colourHistograms(work, label, k).map((part) => ({
    lab: localColour(part),
    share: part.weight / work.includedPixels,
  }));
}
