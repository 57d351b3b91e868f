import type { Cloth, Fold } from '../../drapery/fold.ts';
import { STEPS } from '../../harmony/harmony.ts';
import { spokenOn } from '../../harmony/spoken.ts';
import { type Bench, benchOf } from '../../mixture/bench.ts';
import type { DrawnLadder } from '../drawn/drawn.ts';
import { pileWords } from '../drawn/say.ts';
import { shownOf } from '../drawn/screen.ts';
import { shelf } from '../studio.ts';
import { say } from '../words/drapery.ts';

/** The pigment's label on the shelf; its id if the shelf lacks it. */
export const labelOf = (pigment: string): string =>
  shelf.value.paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;

/** A pigment's name inside a sentence. */
export const spoken = (pigment: string): string => spokenOn(shelf.value)(pigment);

/** Colour difference (CIEDE2000) above which a step is marked out of reach: "plain" in words. */
const PLAIN = 3;

/** A cloth's ladder in display colours. */
export const drawnOf = ({ folds }: Cloth): DrawnLadder =>
  folds.map(({ lab, share, deltaE00 }, i) => ({
    step: STEPS[i]!,
    hex: shownOf(lab),
    share,
    reachable: deltaE00 <= PLAIN,
  }));

/** A fold's recipe in whole parts, laid out for the knife. */
export const benchOfFold = ({ mixture }: Fold): Bench => benchOf(mixture, shelf.value);

/** A fold's pile in words. */
export const pileOf = ({ mixture }: Fold): string => pileWords(mixture, spoken);

/** A fold's pile in words, with the glaze over it. */
export const foldWords = (fold: Fold): string =>
  fold.glaze
    ? `${pileOf(fold)}; ${say.film(spoken(fold.glaze.pigment), Math.round(1000 * fold.glaze.filmMm))}`
    : pileOf(fold);
