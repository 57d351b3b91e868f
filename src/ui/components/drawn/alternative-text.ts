import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import { pilePartsOf } from '../../../mixture/pile-parts.ts';
import { joinWords } from '../../../wording.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { isGamutMapped } from '../../state/screen-colour.ts';

/** The steps out of reach, for example "highlight and deepest fold out of reach"; empty if none. */
export function outOfReachWords(ladder: DrawnLadder): string {
  const missing = ladder.filter((step) => !step.reachable).map((step) => step.step);
  if (missing.length === 0) return '';
  if (missing.length === ladder.length) return 'all steps out of reach';
  return `${joinWords(missing)} out of reach`;
}

/** Note for a colour outside the screen's gamut. */
export const BEYOND_SCREEN = 'beyond what this screen shows';

/** The steps outside the screen's gamut; empty if none. */
export function gamutWords(ladder: DrawnLadder): string {
  const missing = ladder.filter(({ hex }) => isGamutMapped(hex)).map(({ step }) => step);
  if (missing.length === 0) return '';
  return missing.length === ladder.length
    ? BEYOND_SCREEN
    : `${joinWords(missing)} ${BEYOND_SCREEN}`;
}

/** A name, with a note if the screen cannot show its colour. */
export const nameWithGamutNote = (name: string, hex: string): string =>
  isGamutMapped(hex) ? `${name} (${BEYOND_SCREEN})` : name;

/** "1 part", "2.5 parts". */
export const partsWords = (parts: number) =>
  `${formatNumber(parts, 0, 2)} ${parts === 1 ? 'part' : 'parts'}`;

/**
 * A recipe in words, for example "5 parts lead white and 1 part red earth let down 1 to 10 with
 * white".
 *
 * @param label a pigment's name for the reader
 */
export function recipeWords(mixture: Mixture, label: (pigment: string) => string): string {
  const { parts, letDowns } = pilePartsOf(mixture);
  return joinWords(
    parts.map(({ pigment, parts: count, letDown }) => {
      const made = letDown && letDowns.find((one) => one.pigment === pigment);
      const how = made ? ` let down 1 to ${made.whiteParts} with white` : '';
      return `${partsWords(count)} ${label(pigment)}${how}`;
    }),
  );
}
