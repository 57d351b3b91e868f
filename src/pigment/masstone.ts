import { type Reflectance, spectrum } from '../colour/grid.ts';
import { chroma, type Lab, labOf } from '../colour/lab.ts';
import { opaque, type Paint } from '../optics/opaque.ts';
import { addSurface, type Surface } from '../optics/surface.ts';
import type { ShelfPaint } from './shelf.ts';

/** CIELAB (D65) of an opaque film of one unmixed paint, seen through a surface. */
export function masstone(paint: Paint, surface: Surface): Lab {
  const R: Reflectance = spectrum();
  return labOf(addSurface(opaque([1], [paint], R), surface));
}

/**
 * Guesses the studio's white: of the paints pale enough to serve (L* ≥ 85, C*ab ≤ 15) the lightest
 * whose name means white, else the lightest. Null if none is pale enough.
 */
export function findWhite(paints: readonly ShelfPaint[], surface: Surface): string | null {
  const seen = paints.map(({ pigment, label, paint }) => ({
    pigment,
    named: /white|blanc|wei(ss|ß)/i.test(`${pigment} ${label}`),
    lab: masstone(paint, surface),
  }));
  const pale = seen.filter(({ lab }) => lab[0] >= 85 && chroma(lab) <= 15);
  const named = pale.filter((one) => one.named);
  const among = named.length > 0 ? named : pale;
  return among.toSorted((p, q) => q.lab[0] - p.lab[0])[0]?.pigment ?? null;
}
