import { bisect } from '../bisection.ts';
import { chroma } from '../colour/lab.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import { ofShares, predictColour } from '../mixture/predict.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { BlackLoss, Fold } from './cloth-types.ts';

/** Black added at most, as a multiple of the local colour's pile: the pile is then all but black. */
const MOST_BLACK = 100;

/**
 * Chroma that the shadow would lose if black deepened the local colour to the same lightness.
 * @returns null if there is no black, or none that gets so dark
 */
export function lossToBlack(
  local: Mixture,
  shadow: Fold,
  blacks: readonly string[],
  shelf: Shelf,
): BlackLoss | null {
  if (shadow.step === 'reflected light') return null;
  const withBlack = (black: string, amount: number) =>
    predictColour([...ofShares(local.recipe), { pigment: black, amount }], shelf);
  for (const black of blacks) {
    const isLighter = (amount: number) => withBlack(black, amount)[0] > shadow.lab[0];
    if (isLighter(MOST_BLACK)) continue;
    const [, enough] = bisect(0, MOST_BLACK, isLighter, 50);
    return {
      step: shadow.step,
      black,
      chroma: chroma(shadow.lab),
      withBlack: chroma(withBlack(black, enough)),
    };
  }
  return null;
}
