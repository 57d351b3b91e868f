import { stepsBetween, turnWords } from './axes.ts';
import { deltaE00 } from './difference.ts';
import { chroma, type Lab } from './lab.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

/** A difference in words: up to 1, up to 3, and beyond (CIEDE2000). */
export type DifferenceWords = 'none seen' | 'a trained eye sees it' | 'plain';

export function differenceWords(deltaE: number): DifferenceWords {
  if (deltaE <= 1) return 'none seen';
  return deltaE <= 3 ? 'a trained eye sees it' : 'plain';
}

/** Under this many steps along one axis nothing is said about it. */
const SAID = 0.8;
const LITTLE = 3;
const MUCH = 12;
/** Under this chroma a colour has a temperature rather than a hue. */
const NEAR_NEUTRAL = 8;
const WARM: readonly [number, number] = [
  Math.cos((50 * Math.PI) / 180),
  Math.sin((50 * Math.PI) / 180),
];

/**
 * What changed from one colour to another: "lighter, a little warmer, duller"; "no change seen" up to
 * a CIEDE2000 of 1.
 */
export function changeWords(from: Lab, to: Lab): string {
  if (deltaE00(from, to) <= 1) return 'no change seen';
  const steps = stepsBetween(from, to);
  const [weaker, stronger] = [chroma(from), chroma(to)].sort((x, y) => x - y) as [number, number];
  const words = [
    graded(steps.value, 'darker', 'lighter'),
    weaker < NEAR_NEUTRAL ? tintWords(from, to) : hueWords(from, to, steps.hue),
    // Among near-neutrals a change of chroma is the change of tint just named.
    stronger < NEAR_NEUTRAL ? '' : graded(steps.chroma, 'duller', 'brighter'),
  ].filter((word) => word !== '');
  return words.length === 0 ? 'a little different' : words.join(', ');
}

function graded(amount: number, down: string, up: string): string {
  const size = Math.abs(amount);
  if (!(size >= SAID)) return '';
  const word = amount < 0 ? down : up;
  if (size < LITTLE) return `a little ${word}`;
  return size < MUCH ? word : `much ${word}`;
}

/** Warmer or cooler where the turn leads along that axis, else the neighbour's name. */
function hueWords(from: Lab, to: Lab, amount: number): string {
  const along = warmthOf(to) / chroma(to) - warmthOf(from) / chroma(from);
  const size = Math.abs(amount);
  // How much of the turn is towards 50 or 230 degrees: all of it at 140 and 320, none at the poles.
  const turned = Math.hypot(
    to[1] / chroma(to) - from[1] / chroma(from),
    to[2] / chroma(to) - from[2] / chroma(from),
  );
  if (Math.abs(along) > 0.5 * turned) return graded(along > 0 ? size : -size, 'cooler', 'warmer');
  const [back, on] = turnWords(oklabHueDeg(oklabOfLab(from)) ?? 0);
  return graded(amount, back, on);
}

/** Near neutral a step along the warm-cool axis, or across it. */
function tintWords(from: Lab, to: Lab): string {
  const along = warmthOf(to) - warmthOf(from);
  const across = (to[1] - from[1]) * -WARM[1] + (to[2] - from[2]) * WARM[0];
  return Math.abs(along) >= Math.abs(across)
    ? graded(along, 'cooler', 'warmer')
    : graded(across, 'more purple', 'greener');
}

const warmthOf = ([, a, b]: Lab): number => a * WARM[0] + b * WARM[1];
