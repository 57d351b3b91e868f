import { gather } from '../../src/harmony/gather.ts';
import { render } from './specimen-camera.ts';
import type { Scene } from './specimen-canvas.ts';
import { plainKmeans } from './specimen-plain.ts';
import { type Score, score } from './specimen-score.ts';

/** A region that other things cover to under a thousandth is no region to find. */
const LEAST_SHARE = 0.0009;

export interface Judged {
  readonly name: string;
  /** How well gathering did, on the regions that are left. */
  readonly ours: Score;
  /** How well plain k-means did, by its number of clusters. */
  readonly plain: ReadonlyMap<number, Score>;
  /** Regions that are no regions to find, by name. */
  readonly leftOut: readonly string[];
}

/**
 * Renders a scene, gathers it, and compares with the truth: the median of L*, a*, b* of each region in the
 * finished file.
 * @param clusters how many colours plain k-means is given, for comparison
 */
export async function judge(
  scene: Scene,
  height: number,
  clusters: readonly number[],
): Promise<Judged> {
  const { width, data, regions, name, ...file } = await render(scene, height);
  const left = regions.filter((region) => region.share >= LEAST_SHARE);
  const pixels = { width, height: file.height, data, space: 'srgb' } as const;
  const result = gather(pixels);
  if (!result.ok) throw new Error(result.fault.code);
  const ours = score(left, result.value.colours);
  if (ours.missed.length > 0) console.log(`${name}: ${ours.missed.join('; ')}`);
  return {
    name,
    ours,
    plain: new Map(clusters.map((k) => [k, score(left, plainKmeans(pixels, k))])),
    leftOut: regions
      .filter((region) => !left.includes(region))
      .map((region) => `${name}: ${region.name}`),
  };
}

export const sumOf = (scores: readonly Score[], of: (score: Score) => number): number =>
  scores.reduce((sum, score) => sum + of(score), 0);
