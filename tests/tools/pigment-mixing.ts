import { BANDS, type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { filmStackReflectance } from '../../src/optics/film-stack.ts';
import { opaque, type Paint } from '../../src/optics/opaque.ts';
import { addSurface, type Surface } from '../../src/optics/surface.ts';
import { STARTER_SURFACE, wholeShelf } from '../../src/pigment/starter-shelf.ts';

const PAINTS = new Map(wholeShelf().paints.map(({ pigment, paint }) => [pigment, paint]));

export function paint(id: string): Paint {
  const found = PAINTS.get(id);
  if (found === undefined) throw new RangeError(`no pigment ${id}`);
  return found;
}

/** What an opaque mixture of our own pigments reflects, before its surface. */
export function inside(parts: Readonly<Record<string, number>>): Reflectance {
  return opaque(Object.values(parts), Object.keys(parts).map(paint), spectrum<'R'>());
}

/** Its colour, seen with the surface of our own shelf unless another is given. */
export const mixed = (
  parts: Readonly<Record<string, number>>,
  surface: Surface = STARTER_SURFACE,
): Lab => labOf(addSurface(inside(parts), surface));

/** The colour of a film of one pigment over a ground (internal reflectance). */
export function glazed(id: string, filmMm: number, ground: Reflectance): Lab {
  const films = [{ parts: [1], paints: [paint(id)], filmMm }];
  return labOf(filmStackReflectance(films, ground, STARTER_SURFACE, spectrum<'R'>()));
}

export const flatGround = (R: number): Reflectance =>
  spectrum<'R'>(new Float64Array(BANDS).fill(R));

/** Where a falling or rising function crosses a value, between two ends, on a logarithmic scale. */
export function crossing(
  of: (x: number) => number,
  value: number,
  low: number,
  high: number,
): number {
  let [a, b] = [Math.log(low), Math.log(high)];
  const rising = of(high) > of(low);
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (of(Math.exp(middle)) < value === rising) a = middle;
    else b = middle;
  }
  return Math.exp((a + b) / 2);
}

/** The lightness of a tint, brought to a value by its white. */
export function atLightness(colour: string, white: string, L: number): Lab {
  const tint = (parts: number) => mixed({ [colour]: 1, [white]: parts });
  return tint(crossing((parts) => tint(parts)[0], L, 1e-4, 1e4));
}
