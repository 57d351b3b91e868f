import { chroma, hueTurnDeg, type Lab } from './lab.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

/**
 * Words for a change of hue: `back` for a falling and `on` for a rising OKLab hue angle, for hues
 * up to `below` degrees. A blue turns greener or redder, never "bluer".
 */
const TURNS: readonly (readonly [below: number, back: string, on: string])[] = [
  [46, 'bluer', 'yellower'],
  [84, 'redder', 'yellower'],
  [112, 'redder', 'greener'],
  [140, 'yellower', 'greener'],
  [198, 'yellower', 'bluer'],
  [284, 'greener', 'redder'],
  [345, 'bluer', 'redder'],
  [360, 'bluer', 'yellower'],
];

/** Words for a falling (`back`) and a rising (`on`) hue angle. @param hueDeg OKLab, 0 ≤ h < 360 */
export function turnWords(hueDeg: number): readonly [back: string, on: string] {
  const [, back, on] = TURNS.find(([below]) => hueDeg < below)!;
  return [back, on];
}

/**
 * Signed differences of two colours in lightness, chroma and hue, each in units of about 1
 * CIEDE2000.
 */
export interface ColourSteps {
  /** Above 0: the second is lighter. */
  readonly value: number;
  /** Above 0: the second has more chroma. */
  readonly chroma: number;
  /** Above 0: the second has the larger OKLab hue angle; 0 when one is neutral. */
  readonly hue: number;
}

/**
 * Differences in lightness, chroma and hue from one colour to another (CIELAB, D65), with the
 * weights S_L, S_C and (without its term T) S_H of CIEDE2000.
 */
export function stepsBetween(from: Lab, to: Lab): ColourSteps {
  const [C1, C2] = [chroma(from), chroma(to)];
  const meanC = (C1 + C2) / 2;
  const l50 = ((from[0] + to[0]) / 2 - 50) ** 2;
  const [h1, h2] = [oklabHueDeg(oklabOfLab(from)), oklabHueDeg(oklabOfLab(to))];
  const turn = h1 === null || h2 === null ? 0 : hueTurnDeg(h1, h2);
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin((turn * Math.PI) / 360);
  return {
    value: (to[0] - from[0]) / (1 + (0.015 * l50) / Math.sqrt(20 + l50)),
    chroma: (C2 - C1) / (1 + 0.045 * meanC),
    hue: dH / (1 + 0.015 * meanC),
  };
}
