import { deltaE00 } from './difference.ts';
import { stepsBetween, turnWords } from './difference-components.ts';
import { chroma, type Lab } from './lab.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

/** A CIEDE2000 difference in words: up to 1, up to 3, and above. */
export type DifferenceWords = 'none seen' | 'a trained eye sees it' | 'plain';

export function differenceWords(deltaE: number): DifferenceWords {
  if (deltaE <= 1) return 'none seen';
  return deltaE <= 3 ? 'a trained eye sees it' : 'plain';
}

/** Least number of {@link stepsBetween} steps along an axis that gets a word. */
const LEAST_NAMED_STEPS = 0.8;
/** Below this many steps a change is "a little", from {@link MUCH} on it is "much". */
const LITTLE = 3;
const MUCH = 12;
/** Below this chroma a change of tint is described as warmer or cooler rather than by hue. */
const NEAR_NEUTRAL = 8;
const WARM: readonly [number, number] = [
  Math.cos((50 * Math.PI) / 180),
  Math.sin((50 * Math.PI) / 180),
];

/**
 * Describes the change from one colour to another (CIELAB, D65): "lighter, a little warmer,
 * duller"; "no change seen" up to a CIEDE2000 of 1.
 */
export function changeWords(from: Lab, to: Lab): string {
  if (deltaE00(from, to) <= 1) return 'no change seen';
  const steps = stepsBetween(from, to);
  const [weaker, stronger] = [chroma(from), chroma(to)].sort((x, y) => x - y) as [number, number];
  const words = [
    graded(steps.value, 'darker', 'lighter'),
    weaker < NEAR_NEUTRAL ? tintWords(from, to) : hueWords(from, to, steps.hue),
    // Between near-neutrals the tint words already describe the change of chroma.
    stronger < NEAR_NEUTRAL ? '' : graded(steps.chroma, 'duller', 'brighter'),
  ].filter((word) => word !== '');
  return words.length === 0 ? 'a little different' : words.join(', ');
}

function graded(amount: number, down: string, up: string): string {
  const size = Math.abs(amount);
  if (!(size >= LEAST_NAMED_STEPS)) return '';
  const word = amount < 0 ? down : up;
  if (size < LITTLE) return `a little ${word}`;
  return size < MUCH ? word : `much ${word}`;
}

/** "Warmer" or "cooler" where the hue moves along that axis, else the neighbouring hue's word. */
function hueWords(from: Lab, to: Lab, amount: number): string {
  const along = warmthOf(to) / chroma(to) - warmthOf(from) / chroma(from);
  const size = Math.abs(amount);
  // Length of the turn on the unit circle. A turn at 140 or 320 degrees runs wholly along the
  // warm-cool axis (poles 50 and 230 degrees), a turn at a pole not at all.
  const turned = Math.hypot(
    to[1] / chroma(to) - from[1] / chroma(from),
    to[2] / chroma(to) - from[2] / chroma(from),
  );
  if (Math.abs(along) > 0.5 * turned) return graded(along > 0 ? size : -size, 'cooler', 'warmer');
  const [back, on] = turnWords(oklabHueDeg(oklabOfLab(from)) ?? 0);
  return graded(amount, back, on);
}

/** For near-neutrals: the change along the warm-cool axis or across it, whichever is larger. */
function tintWords(from: Lab, to: Lab): string {
  const along = warmthOf(to) - warmthOf(from);
  const across = (to[1] - from[1]) * -WARM[1] + (to[2] - from[2]) * WARM[0];
  return Math.abs(along) >= Math.abs(across)
    ? graded(along, 'cooler', 'warmer')
    : graded(across, 'more purple', 'greener');
}

const warmthOf = ([, a, b]: Lab): number => a * WARM[0] + b * WARM[1];
