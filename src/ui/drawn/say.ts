import { laidOf } from '../../mixture/laid.ts';
import type { Mixture } from '../../mixture/mixture.ts';
import { joinWords } from '../../wording.ts';
import { figure } from '../locale.ts';
import type { DrawnLadder } from './drawn.ts';
import { isNearest } from './screen.ts';

/** The steps out of reach, for example "highlight and deepest fold out of reach"; empty if none. */
export function unreachedWords(ladder: DrawnLadder): string {
  const missing = ladder.filter((step) => !step.reachable).map((step) => step.step);
  if (missing.length === 0) return '';
  if (missing.length === ladder.length) return 'all steps out of reach';
  return `${joinWords(missing)} out of reach`;
}

/** Note for a colour outside the screen's gamut. */
export const BEYOND_SCREEN = 'beyond what this screen shows';

/** The steps outside the screen's gamut; empty if none. */
export function nearestWords(ladder: DrawnLadder): string {
  const missing = ladder.filter(({ hex }) => isNearest(hex)).map(({ step }) => step);
  if (missing.length === 0) return '';
  return missing.length === ladder.length
    ? BEYOND_SCREEN
    : `${joinWords(missing)} ${BEYOND_SCREEN}`;
}

/** A name, with a note if the screen cannot show its colour. */
export const spokenOf = (name: string, hex: string): string =>
  isNearest(hex) ? `${name} (${BEYOND_SCREEN})` : name;

/** "1 part", "2.5 parts". */
export const partsWords = (parts: number) =>
  `${figure(parts, 0, 2)} ${parts === 1 ? 'part' : 'parts'}`;

/**
 * A recipe in words, for example "5 parts lead white and 1 part red earth let down 1 to 10 with
 * white".
 *
 * @param label a pigment's name for the reader
 */
export function pileWords(mixture: Mixture, label: (pigment: string) => string): string {
  const { parts, letDowns } = laidOf(mixture);
  return joinWords(
    parts.map(({ pigment, parts: count, letDown }) => {
      const made = letDown && letDowns.find((one) => one.pigment === pigment);
      const how = made ? ` let down 1 to ${made.whiteParts} with white` : '';
      return `${partsWords(count)} ${label(pigment)}${how}`;
    }),
  );
}
