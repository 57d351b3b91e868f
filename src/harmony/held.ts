import { warmCool } from '../colour/appearance.ts';
import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { NEUTRAL_CHROMA, type Way } from './vary.ts';

const HUE_HELD_DEG = 5;

/** Whether a pile lies on the right side of its origin, on the published scale where there is one. */
export function keeps(way: Way, from: Lab, to: Lab): boolean {
  switch (way) {
    case 'warmer':
      return warmCool(to) >= warmCool(from);
    case 'cooler':
      return warmCool(to) <= warmCool(from);
    case 'lighter':
      return to[0] >= from[0] && hueHeld(from, to);
    case 'deeper':
      return to[0] <= from[0] && hueHeld(from, to);
    case 'brighter':
      return chroma(to) >= chroma(from) && hueHeld(from, to);
    case 'duller':
      return chroma(to) <= chroma(from) && hueHeld(from, to);
  }
}

/** OKLab hue held within 5 degrees; a neutral (C* under 8) has none to hold. */
export function hueHeld(from: Lab, to: Lab, withinDeg = HUE_HELD_DEG): boolean {
  if (Math.min(chroma(from), chroma(to)) < NEUTRAL_CHROMA) return true;
  const [h1, h2] = [oklabHueDeg(oklabOfLab(from)), oklabHueDeg(oklabOfLab(to))];
  return h1 === null || h2 === null || Math.abs(hueTurnDeg(h1, h2)) <= withinDeg;
}
