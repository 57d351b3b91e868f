import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { labOfOklab, oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { kindOf } from '../harmony/family.ts';
import { dulled } from './lay.ts';
import type { Tones } from './tone.ts';

/** OKLab hue to which lights lean: that of yellow. */
const BRIGHT_HUE = 100;
/** How far the light and the highlight may lean, degrees: vermilion and orange for red, lead-tin yellow for green. */
const LEAN = [10, 18] as const;
/** Leaning is worth it where it keeps this much more chroma than staying. */
const GAIN = 1.5;

/** What is wished above the local colour: the highlight and the light. */
export function lightsOf(
  tones: Tones,
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

/** Red leans to vermilion and orange, green to lead-tin yellow; nothing leans further than there. */
function leanOf(local: Lab): readonly [number, number] {
  const { family } = kindOf(local);
  const h = oklabHueDeg(oklabOfLab(local));
  if (h === null || !['red', 'orange', 'brown', 'green', 'pink'].includes(family)) return [0, 0];
  const way = hueTurnDeg(h, BRIGHT_HUE);
  const by = (most: number) => Math.sign(way) * Math.min(most, Math.abs(way));
  return [by(LEAN[0]), by(LEAN[1])];
}

/** What is wished below the local colour, its hue held: as much chroma as the shelf keeps there. */
export function shadowsOf(tones: Tones, local: Lab, lightness: readonly number[]): readonly Lab[] {
  const C = chroma(local);
  return lightness.map(
    (L) => tones.strongest(L, C, tones.alive) ?? tones.strongest(L, C, 0, 0, 4) ?? tones.at(L, 0),
  );
}

/** Between the local colour and the shadow of shot cloth both hues meet. */
export function meeting(tones: Tones, local: Lab, shadow: Lab, L: number): Lab {
  const [x, y] = [oklabOfLab(local), oklabOfLab(shadow)];
  const middle = labOfOklab([(x[0] + y[0]) / 2, (x[1] + y[1]) / 2, (x[2] + y[2]) / 2]);
  const wish: Lab = [L, middle[1], middle[2]];
  return dulled(wish, (lab) => tones.passes(lab)) ?? [L, 0, 0];
}

/** What a neighbour throws back into the shadow: the cloth's own colour, drawn to the neighbour's. */
export function reflection(own: Lab, neighbour: Lab, L: number): Lab {
  const [x, y] = [oklabOfLab(own), oklabOfLab(neighbour)];
  const at = (i: 1 | 2) => 0.55 * x[i] + 0.45 * y[i];
  const lab = labOfOklab([x[0], at(1), at(2)]);
  return [L, lab[1], lab[2]];
}
