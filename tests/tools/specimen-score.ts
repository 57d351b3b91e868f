import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import type { Region } from './specimen-camera.ts';

export interface Found {
  readonly lab: Lab;
  readonly share: number;
}

/** How well colours match the regions of a specimen, one colour a region. */
export interface Score {
  readonly regions: number;
  /** Regions within CIEDE2000 (kL = 2) 6 of a colour of their own. */
  readonly found: number;
  /** Sum of the differences of the regions matched. */
  readonly sum: number;
  readonly worst: number;
  /** Regions over 5 % whose share is off by more than a quarter. */
  readonly sharesOff: number;
  readonly large: number;
  readonly colours: number;
  /** Regions missed, in words. */
  readonly missed: readonly string[];
}

/** The assignment, one to one, that finds most regions with the least sum of differences. */
export function score(regions: readonly Region[], colours: readonly Found[]): Score {
  const n = regions.length;
  const cost = regions.map((r) => colours.map((c) => deltaE00(r.lab, c.lab, 2)));
  let best = Infinity;
  let bestOf: number[] = [];
  const used = new Array<boolean>(colours.length).fill(false);
  const chosen: number[] = [];
  const price = (d: number) => (d <= 6 ? d : 60 + Math.min(d, 60));
  const search = (at: number, sum: number) => {
    if (sum >= best) return;
    if (at === n) {
      best = sum;
      bestOf = chosen.slice();
      return;
    }
    const order = colours.map((_, c) => c).sort((p, q) => cost[at]![p]! - cost[at]![q]!);
    for (const c of order.slice(0, 4)) {
      if (used[c]) continue;
      used[c] = true;
      chosen[at] = c;
      search(at + 1, sum + price(cost[at]![c]!));
      used[c] = false;
    }
    chosen[at] = -1;
    search(at + 1, sum + 130);
  };
  search(0, 0);
  let found = 0;
  let sum = 0;
  let worst = 0;
  let sharesOff = 0;
  let large = 0;
  const missed: string[] = [];
  regions.forEach((region, i) => {
    const c = bestOf[i]!;
    const d = c < 0 ? 60 : cost[i]![c]!;
    if (d <= 6) {
      found++;
      sum += d;
      worst = Math.max(worst, d);
    } else missed.push(`${region.name} (${(region.share * 100).toFixed(2)} %, ${d.toFixed(1)})`);
    if (region.share > 0.05) {
      large++;
      if (c < 0 || Math.abs(colours[c]!.share / region.share - 1) > 0.25) {
        sharesOff++;
        if (d <= 6)
          missed.push(
            `share of ${region.name}: ${(100 * colours[c]!.share).toFixed(1)} for ${(100 * region.share).toFixed(1)} %`,
          );
      }
    }
  });
  return { regions: n, found, sum, worst, sharesOff, large, colours: colours.length, missed };
}

export function total(scores: readonly Score[]): string {
  const add = (f: (s: Score) => number) => scores.reduce((sum, s) => sum + f(s), 0);
  const found = add((s) => s.found);
  return `${found} of ${add((s) => s.regions)} regions, mean ${(add((s) => s.sum) / Math.max(1, found)).toFixed(2)}, worst ${Math.max(...scores.map((s) => s.worst)).toFixed(1)}, shares off ${add((s) => s.sharesOff)} of ${add((s) => s.large)}, colours ${add((s) => s.colours)}`;
}
