import { BANDS } from '../colour/grid.ts';
import { D65 } from '../colour/observer.ts';
import type { Paint } from './opaque.ts';

/** Luminous tinting strength per volume of paste: Σ ȳ(K + S), weighted for D65. */
export function tintingStrength({ K, S }: Paint): number {
  let sum = 0;
  for (let band = 0; band < BANDS; band++) sum += (D65.Y[band]! / 100) * (K[band]! + S[band]!);
  return sum;
}
