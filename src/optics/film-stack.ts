import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';
import { type Film, type FilmOptics, filmOverGround } from './film.ts';
import { addSurface, type Surface } from './surface.ts';

/**
 * Reflectance of films painted over each other, such as a glaze over an underpaint over a ground.
 * There is no optical boundary between films (their binders are alike); the only surface is the
 * outermost.
 *
 * @param films   from the ground up; an empty list shows the ground
 * @param ground  as seen from inside the paint, BANDS values 0…1
 * @param surface of the uppermost film; NO_SURFACE gives the internal reflectance
 * @param out     BANDS values 0…1, overwritten and returned; not the ground itself
 * @throws RangeError as film() and addSurface()
 * @see P. Kubelka, J. Opt. Soc. Am. 44 (1954) 330
 */
export function filmStackReflectance(
  films: readonly Film[],
  ground: Reflectance,
  surface: Surface,
  out: Reflectance,
): Reflectance {
  out.set(ground);
  for (const each of films) filmOverGround(each, out, out);
  return addSurface(out, surface);
}

/**
 * Combines two layers into one, seen from above: R = R₁ + T₁²R₂ ÷ (1 − R₁R₂), T = T₁T₂ ÷ (1 −
 * R₁R₂), in new spectra. A combined layer has another reflectance from below, and light from
 * `lower` reaches `upper` from below: `lower` may be a combined layer, `upper` must not. Combine
 * from the ground up.
 * @see P. Kubelka, J. Opt. Soc. Am. 44 (1954) 330
 */
export function combineLayers(upper: FilmOptics, lower: FilmOptics): FilmOptics {
  const R0 = spectrum<'R'>();
  const T = spectrum<'T'>();
  for (let band = 0; band < BANDS; band++) {
    const R1 = upper.R0[band]!;
    const T1 = upper.T[band]!;
    const R2 = lower.R0[band]!;
    // Avoids 0 ÷ 0 for two perfect mirrors, which transmit nothing.
    const bounces = T1 === 0 ? 0 : T1 / (1 - R1 * R2);
    R0[band] = R1 + T1 * R2 * bounces;
    T[band] = lower.T[band]! * bounces;
  }
  return { R0, T };
}
