import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { labOfOklab } from '../colour/oklab.ts';
import { FIELD } from './border.ts';
import type { Group } from './cost.ts';

/** A thing of less than this share … */
const SMALL = 0.015;
/** … is kept only if it is farther than this from every other (CIEDE2000, kL = 2). */
export const FAR = 7;
/** … and farther where hue wanders inside things. */
export const FAR_WANDER = 350;

/** Less than this is never a thing: a few cells of grain or of a rim. */
const LEAST = 0.0005;

/** A rim has less than this share, … */
const RIM_SHARE = 0.03;
/** … this many neighbours of another colour a cell, … */
const RIM_EDGE = 0.75;
/** … and a colour this near the line between the two that it lies between, in OKLab. */
const RIM_NEAR = 0.04;

/**
 * The smallest group that is no thing of its own, or −1: small and not far from another, or the rim
 * where two things mix.
 */
export function notAThing(
  joining: {
    readonly groups: readonly (Group | undefined)[];
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
    if (isRim(p, live, (i) => joining.border(p.i, i, FIELD.meetings))) return p.i;
  }
  return -1;
}

type Live = { readonly i: number; readonly g: Group };

/** Thin everywhere, and of a colour between the two that it touches most. */
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

const oklab = ({ L, a, b }: Group): [number, number, number] => [L, a * L, b * L];

const labOf = (g: Group): Lab => labOfOklab(oklab(g));
