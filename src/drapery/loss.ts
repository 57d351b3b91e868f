import { chroma } from '../colour/lab.ts';
import type { Mixture } from '../mixture/mixture.ts';
import { ofShares, predict } from '../mixture/predict.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { BlackLoss, Fold } from './fold.ts';

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
    predict([...ofShares(local.recipe), { pigment: black, amount }], shelf);
  for (const black of blacks) {
    let [low, high] = [0, 100];
    if (withBlack(black, high)[0] > shadow.lab[0]) continue;
    for (let round = 0; round < 50; round++) {
      const middle = (low + high) / 2;
      if (withBlack(black, middle)[0] > shadow.lab[0]) low = middle;
      else high = middle;
    }
    return {
      step: shadow.step,
      black,
      chroma: chroma(shadow.lab),
      withBlack: chroma(withBlack(black, high)),
    };
  }
  return null;
}
