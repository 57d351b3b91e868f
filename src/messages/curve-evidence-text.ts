import { type Accuracy, RECENT_PILES } from '../calibration/logged-pile.ts';
import type { NumberFormat } from '../number-format.ts';
import type { CurveEvidence, ErrorQuantiles } from '../pigment/stock.ts';

/** The evidence for a pigment in a sentence or two. */
export function evidenceWords(
  { known, rough, date, swatches, piles, expected }: CurveEvidence,
  number: NumberFormat,
): string {
  if (known === 'handbook')
    return 'From the handbook: a guess about your own tube until a swatch of it is photographed. Brush out what you mix before you trust it.';
  const from = [
    ...(swatches > 0 ? [swatches === 1 ? 'one swatch' : `${swatches} swatches`] : []),
    ...(piles > 0 ? [piles === 1 ? 'one pile' : `${piles} piles`] : []),
  ].join(' and ');
  const how = `${known === 'measured' ? 'Measured' : 'Photographed'}${date === null ? '' : ` (${date})`}, ${from === '' ? 'from other swatches' : `from ${from}`}.`;
  const how2 = rough
    ? ' Rough: its masstone alone hides how strongly it tints, so add a tint in white.'
    : '';
  return `${how}${how2} ${errorWords(expected, number)}`;
}

/** An expected error in words, with numbers. */
export function errorWords(expected: ErrorQuantiles, number: NumberFormat): string {
  const { median, tenth } = expected;
  return `${expectedErrorWords(expected)} (about ${rounded(median, number)}; one in ten is worse than ${rounded(tenth, number)}).`;
}

/** An expected error in words, without numbers: "Usually only a trained eye sees a difference". */
export const expectedErrorWords = ({ median }: ErrorQuantiles): string =>
  median <= 1
    ? 'Usually no difference is seen'
    : median <= 3
      ? 'Usually only a trained eye sees a difference'
      : 'Usually a difference is plain';

/** The accuracy in a sentence; empty without piles. */
export function accuracyWords({ piles, lately, atFirst }: Accuracy, number: NumberFormat): string {
  if (lately === null)
    return piles.length === 0
      ? ''
      : `${piles.length === 1 ? 'One pile was' : 'Two piles were'} logged; from three on Kingcup says how well it foresees.`;
  const now = `Of the last ${Math.min(RECENT_PILES, piles.length)} piles half came out within ${number(lately.median, 1)} of what was foreseen.`;
  return atFirst === null ? now : `${now} At first it was ${number(atFirst.median, 1)}.`;
}

const rounded = (v: number, number: NumberFormat): string => number(v, v < 3 ? 1 : 0);
