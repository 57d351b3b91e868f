import type { HarmonyMove } from '../harmony/harmony-move.ts';
import { joinWords } from '../wording.ts';

/** Describes a move in one or two sentences. Positive turns go towards larger OKLab hue angles. */
export function moveWords({ lightness, shift, chroma, turnDeg }: HarmonyMove): string {
  const turn = Math.abs(turnDeg);
  const said = [
    lightness < 0.995 ? `the range of light and dark is drawn in ${share(lightness)}` : '',
    Math.abs(shift) >= 0.5
      ? `everything is ${Math.abs(shift) < 3 ? 'a little ' : ''}${shift > 0 ? 'lighter' : 'deeper'}`
      : '',
    chroma < 0.995 ? `all chroma comes down ${share(chroma)}` : '',
    turn >= 0.5
      ? `every hue turns by ${Math.round(turn)} degrees, ${turnDeg > 0 ? 'reds towards yellow and yellows towards green' : 'yellows towards red and greens towards yellow'}`
      : '',
  ].filter((words) => words !== '');
  if (said.length === 0) return 'Nothing has to move: the shelf reaches every colour.';
  const kept = turn < 0.5 ? ' Hues stay as they are.' : '';
  return `All together: ${joinWords(said)}.${kept}`;
}

/** Words for a factor, by lower bound. */
const SHARES: readonly (readonly [number, string])[] = [
  [0.97, 'by next to nothing'],
  [0.92, 'to nine tenths and more'],
  [0.87, 'to nine tenths'],
  [0.82, 'to five sixths'],
  [0.77, 'to four fifths'],
  [0.71, 'to three quarters'],
  [0.62, 'to two thirds'],
  [0.55, 'to three fifths'],
  [0.45, 'to a half'],
  [0.36, 'to two fifths'],
  [0.29, 'to a third'],
  [0, 'to a quarter or less'],
];
const share = (factor: number): string => SHARES.find(([from]) => factor >= from)![1];
