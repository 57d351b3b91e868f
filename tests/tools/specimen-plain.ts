import { colourHistograms, localColour } from '../../src/harmony/local-colour.ts';
import { downsampled } from '../../src/photo/downsample.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { colourHistogram, weightedKMeans } from '../../src/segmentation/histogram-kmeans.ts';
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
