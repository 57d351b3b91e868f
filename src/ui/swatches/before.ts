import { computed } from '@preact/signals';
import { deltaE00 } from '../../colour/difference.ts';
import { type Reflectance, spectrum } from '../../colour/grid.ts';
import { labOf } from '../../colour/lab.ts';
import { opaque, type Paint } from '../../optics/opaque.ts';
import { addSurface } from '../../optics/surface.ts';
import type { Painted } from '../../pigment/calibrate/swatches.ts';
import { curveOfEntry } from '../../pigment/mixable.ts';
import type { Stock } from '../../pigment/stock.ts';
import { ownStock } from '../shelf/state.ts';
import { found } from './fitting.ts';

/** How far a swatch came out from what a stock foresees (CIEDE2000); null where a paint of it has no curve. */
export function offOn(stock: Stock, { parts, lab }: Pick<Painted, 'parts' | 'lab'>): number | null {
  const paints: Paint[] = [];
  for (const { pigment } of parts) {
    const entry = stock.entries.find(({ id }) => id === pigment);
    const paint = entry && curveOfEntry(stock, entry);
    if (!paint) return null;
    paints.push(paint);
  }
  const R: Reflectance = opaque(
    parts.map((part) => part.parts),
    paints,
    spectrum(),
  );
  return deltaE00(labOf(addSurface(R, stock.surface)), lab);
}

/** What the shelf as it is foresees of each swatch of the fit, in its order. */
export const before = computed(() =>
  (found.value?.swatches ?? []).map(({ painted }) => offOn(ownStock.value, painted)),
);
