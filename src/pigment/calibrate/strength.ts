import { BANDS } from '../../colour/grid.ts';
import { D65 } from '../../colour/observer.ts';
import type { Paint } from '../../optics/opaque.ts';

/** Luminous strength of a unit of paste, Σ ȳ(K + S): how much of it a pile feels. */
export function strength({ K, S }: Paint): number {
  let sum = 0;
  for (let band = 0; band < BANDS; band++) sum += (D65.Y[band]! / 100) * (K[band]! + S[band]!);
  return sum;
}
