import type { Cloth, Fold } from '../../drapery/fold.ts';
import { STEPS } from '../../harmony/harmony.ts';
import { spokenOn } from '../../harmony/spoken.ts';
import { masstonesOf } from '../../pigment/near.ts';
import type { DrawnLadder } from '../drawn/drawn.ts';
import { listed, partsWords } from '../drawn/say.ts';
import { shownOf } from '../drawn/screen.ts';
import { shelf } from '../studio.ts';
import { say } from './words.ts';

export const labelOf = (pigment: string): string =>
  shelf.value.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;

/** A pigment within a sentence. */
export const spoken = (pigment: string): string => spokenOn(shelf.value)(pigment);

/** Beyond this a step is marked as out of reach. */
const PLAIN = 3;

/** A cloth's ladder in display colours. */
export const drawnOf = ({ folds }: Cloth): DrawnLadder =>
  folds.map(({ lab, share, deltaE00 }, i) => ({
    step: STEPS[i]!,
    hex: shownOf(lab),
    share,
    reachable: deltaE00 <= PLAIN,
  }));

/** "5 parts lead white and 1 part red earth". */
export const pileOf = ({ mixture }: Fold): string =>
  listed(mixture.parts.map(({ pigment, parts }) => `${partsWords(parts)} ${spoken(pigment)}`));

/** A fold's pile, and the film over it. */
export const foldWords = (fold: Fold): string =>
  fold.glaze
    ? `${pileOf(fold)}; ${say.film(spoken(fold.glaze.pigment), Math.round(1000 * fold.glaze.filmMm))}`
    : pileOf(fold);

/** The piles of a fold for the drawing of its recipe. */
export function heapsOf({ mixture }: Fold): { name: string; hex: string; parts: number }[] {
  const masstones = masstonesOf(shelf.value);
  return mixture.parts.map(({ pigment, parts }) => {
    const paint = masstones.find((one) => one.pigment === pigment);
    return { name: labelOf(pigment), hex: paint ? shownOf(paint.lab) : '#808080', parts };
  });
}
