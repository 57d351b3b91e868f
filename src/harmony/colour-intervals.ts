import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import type { Declared } from './period-family.ts';
import { NEUTRAL_CHROMA } from './variant-target.ts';

/** The properties of a colour that its relations depend on. */
export interface Related {
  readonly name: string;
  readonly lab: Lab;
  /** Share of the area, 0…1. */
  readonly share: number;
  readonly accent?: boolean;
  readonly declared?: Declared;
}

/** Difference between two colours along one axis, as a number and in words. */
export interface Interval {
  /** Difference of L*, of C*, or of OKLab hue in degrees (−180…180; 0 if either has no hue). */
  readonly by: number;
  readonly words: string;
}

/** Interval of lightness. One Munsell value step is about 10 of L*. */
export function lightness(x: Related, y: Related): Interval {
  const by = y.lab[0] - x.lab[0];
  return { by, words: compared(x, y, by, [3, 10, 30], 'equally light', ['darker', 'lighter']) };
}

/** Interval of chroma. One Munsell chroma step is about 5 of C*. */
export function purity(x: Related, y: Related): Interval {
  const by = chroma(y.lab) - chroma(x.lab);
  return { by, words: compared(x, y, by, [4, 12, 30], 'equally strong', ['duller', 'brighter']) };
}

function compared(
  x: Related,
  y: Related,
  by: number,
  [same, little, much]: readonly [number, number, number],
  alike: string,
  [down, up]: readonly [string, string],
): string {
  const size = Math.abs(by);
  if (size < same) return `the ${x.name} and the ${y.name} are ${alike}`;
  const word = by < 0 ? down : up;
  const how = size < little ? 'a little ' : size >= much ? 'much ' : '';
  return `the ${y.name} is ${how}${word} than the ${x.name}`;
}

/** Words for a difference of hue, by upper bound in degrees; the angle itself is never shown. */
const FAR: readonly (readonly [below: number, words: string])[] = [
  [12, 'of one hue'],
  [40, 'neighbours in hue'],
  [80, 'of related hues'],
  [130, 'far apart in hue'],
  [181, 'of opposed hues'],
];

/** Interval of hue, in OKLab; neutral colours have none. */
export function hue(x: Related, y: Related): Interval {
  const both = `the ${x.name} and the ${y.name}`;
  const neutral = [x, y].filter(({ lab }) => chroma(lab) < NEUTRAL_CHROMA);
  if (neutral.length === 2) return { by: 0, words: `${both} have hardly a hue` };
  if (neutral.length === 1)
    return { by: 0, words: `the ${neutral[0]!.name} has hardly a hue beside the other` };
  const [h1, h2] = [oklabHueDeg(oklabOfLab(x.lab))!, oklabHueDeg(oklabOfLab(y.lab))!];
  const by = hueTurnDeg(h1, h2);
  const words = FAR.find(([below]) => Math.abs(by) < below)![1];
  return { by, words: `${both} are ${words}` };
}
