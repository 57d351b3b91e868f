import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { labOfOklab, oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { kindOf } from '../harmony/period-family.ts';
import type { HueRange } from './hue-range.ts';
import { reduceChroma } from './ladder-search.ts';

/** OKLab hue, degrees, towards which lights lean: yellow. */
const BRIGHT_HUE = 100;
/**
 * Largest lean of the light and of the highlight, degrees: vermilion and orange for red, lead-tin
 * yellow for green.
 */
const LEAN = [10, 18] as const;
/** Gain in chroma that justifies leaning. */
const GAIN = 1.5;

/** Targets above the local colour: the highlight and the light. */
export function lightsOf(
  tones: HueRange,
  local: Lab,
  lightness: readonly [highlight: number, light: number],
  white: Lab,
  upright: boolean,
): readonly [Lab, Lab] {
  const C = chroma(local);
  const one = (L: number, lean: number): Lab => {
    if (L >= white[0]) return white;
    const straight = tones.strongest(L, C, 0) ?? [L, 0, 0];
    if (upright || tones.neutral || lean === 0) return straight;
    const leaning = tones.strongest(L, C, 0, lean);
    return leaning !== null && chroma(leaning) > chroma(straight) + GAIN ? leaning : straight;
  };
  const [less, more] = upright ? [0, 0] : leanOf(local);
  return [one(lightness[0], more), one(lightness[1], less)];
}

/**
 * Degrees by which lights lean: red towards vermilion and orange, green towards lead-tin yellow.
 */
function leanOf(local: Lab): readonly [number, number] {
  const { family } = kindOf(local);
  const h = oklabHueDeg(oklabOfLab(local));
  if (h === null || !['red', 'orange', 'brown', 'green', 'pink'].includes(family)) return [0, 0];
  const way = hueTurnDeg(h, BRIGHT_HUE);
  const by = (most: number) => Math.sign(way) * Math.min(most, Math.abs(way));
  return [by(LEAN[0]), by(LEAN[1])];
}

/** Targets below the local colour: the same hue, with as much chroma as the shelf has there. */
export function shadowsOf(
  tones: HueRange,
  local: Lab,
  lightness: readonly number[],
): readonly Lab[] {
  const C = chroma(local);
  return lightness.map(
    (L) => tones.strongest(L, C, tones.alive) ?? tones.strongest(L, C, 0, 0, 4) ?? tones.at(L, 0),
  );
}

/** Target between the local colour and the shadow of shot cloth, where both hues meet. */
export function blendTarget(tones: HueRange, local: Lab, shadow: Lab, L: number): Lab {
  const [x, y] = [oklabOfLab(local), oklabOfLab(shadow)];
  const middle = labOfOklab([(x[0] + y[0]) / 2, (x[1] + y[1]) / 2, (x[2] + y[2]) / 2]);
  const wish: Lab = [L, middle[1], middle[2]];
  return reduceChroma(wish, (lab) => tones.isMixable(lab)) ?? [L, 0, 0];
}

/** Target for reflected light: the cloth's own colour, mixed with its neighbour's in OKLab. */
export function reflection(own: Lab, neighbour: Lab, L: number): Lab {
  const [x, y] = [oklabOfLab(own), oklabOfLab(neighbour)];
  const at = (i: 1 | 2) => 0.55 * x[i] + 0.45 * y[i];
  const lab = labOfOklab([x[0], at(1), at(2)]);
  return [L, lab[1], lab[2]];
}
