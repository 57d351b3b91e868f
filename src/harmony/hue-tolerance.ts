import { warmCool } from '../colour/appearance.ts';
import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { NEUTRAL_CHROMA, type VariantWay } from './variant-target.ts';

/** Hue tolerance in OKLab degrees. */
const HUE_HELD_DEG = 5;

/**
 * Whether a mixture changed its origin in the intended direction; warmer and cooler by the
 * published warm-cool scale.
 */
export function changesInDirection(way: VariantWay, from: Lab, to: Lab): boolean {
  switch (way) {
    case 'warmer':
      return warmCool(to) >= warmCool(from);
    case 'cooler':
      return warmCool(to) <= warmCool(from);
    case 'lighter':
      return to[0] >= from[0] && isHueWithin(from, to);
    case 'deeper':
      return to[0] <= from[0] && isHueWithin(from, to);
    case 'brighter':
      return chroma(to) >= chroma(from) && isHueWithin(from, to);
    case 'duller':
      return chroma(to) <= chroma(from) && isHueWithin(from, to);
  }
}

/**
 * Whether two colours have the same OKLab hue within a tolerance, 5 degrees by default; true for
 * neutrals (C* under 8), which have no hue.
 */
export function isHueWithin(from: Lab, to: Lab, withinDeg = HUE_HELD_DEG): boolean {
  if (Math.min(chroma(from), chroma(to)) < NEUTRAL_CHROMA) return true;
  const [h1, h2] = [oklabHueDeg(oklabOfLab(from)), oklabHueDeg(oklabOfLab(to))];
  return h1 === null || h2 === null || Math.abs(hueTurnDeg(h1, h2)) <= withinDeg;
}
