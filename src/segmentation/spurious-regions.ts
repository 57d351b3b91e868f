import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { labOfOklab } from '../colour/oklab.ts';
import { SUM } from './boundaries.ts';
import type { MergedGroup } from './merge-cost.ts';

/** Share of the area below which a group is small. */
const SMALL = 0.015;
/** A small group is kept only if it is farther than this from every other (CIEDE2000, kL = 2). */
export const FAR = 7;
/** Increase of that distance per unit of hue variation within objects. */
export const FAR_WANDER = 350;

/** Share below which a group is always spurious: a few cells of grain or of a rim. */
const LEAST = 0.0005;

/** A rim has less than this share. */
const RIM_SHARE = 0.03;
/** A rim has at least this many adjacent cells of other colours per cell of its own. */
const RIM_EDGE = 0.75;
/** A rim's colour lies within this OKLab distance of the line between its two neighbours. */
const RIM_NEAR = 0.04;

/**
 * Index of the smallest spurious region: small and near another colour, or the blended rim between
 * two objects; −1 if none.
 * @param total weight of all groups
 * @param far distance that counts as far (CIEDE2000, kL = 2)
 */
export function smallestSpuriousRegion(
  joining: {
    readonly groups: readonly (MergedGroup | undefined)[];
    border(i: number, j: number, field: number): number;
  },
  total: number,
  far: number,
): number {
  const live = joining.groups.flatMap((g, i) => (g ? [{ i, g, lab: labOf(g) }] : []));
  if (live.length < 2) return -1;
  live.sort((p, q) => p.g.weight - q.g.weight || p.i - q.i);
  for (const p of live) {
    if (p.g.weight > RIM_SHARE * total) break;
    if (p.g.weight < LEAST * total) return p.i;
    const near = live.some((q) => q !== p && deltaE00(p.lab, q.lab, 2) < far);
    if (p.g.weight < SMALL * total && near) return p.i;
    if (isRim(p, live, (i) => joining.border(p.i, i, SUM.meetings))) return p.i;
  }
  return -1;
}

type Live = { readonly i: number; readonly g: MergedGroup };

/** Whether a group is thin everywhere and its colour lies between its two main neighbours. */
function isRim(p: Live, live: readonly Live[], meets: (i: number) => number): boolean {
  const others = live.flatMap((q) => (q === p ? [] : [{ q, all: meets(q.i) }]));
  const edge = others.reduce((sum, { all }) => sum + all, 0);
  if (edge < RIM_EDGE * p.g.cells || others.length < 2) return false;
  others.sort((s, t) => t.all - s.all || s.q.i - t.q.i);
  const [from, to, here] = [oklab(others[0]!.q.g), oklab(others[1]!.q.g), oklab(p.g)];
  const way = to.map((v, c) => v - from[c]!);
  const length2 = way.reduce((sum, v) => sum + v * v, 0);
  const t = way.reduce((sum, v, c) => sum + v * (here[c]! - from[c]!), 0) / length2;
  if (!(t > 0 && t < 1)) return false;
  return Math.hypot(...here.map((v, c) => v - from[c]! - t * way[c]!)) < RIM_NEAR;
}

const oklab = ({ L, a, b }: MergedGroup): [number, number, number] => [L, a * L, b * L];

const labOf = (g: MergedGroup): Lab => labOfOklab(oklab(g));
