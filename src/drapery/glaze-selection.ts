import { bisect } from '../bisection.ts';
import { type Reflectance, spectrum } from '../colour/grid.ts';
import { hueTurnDeg, type Lab, labOf } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import type { MixturePart, Share } from '../mixture/mixture-types.ts';
import { filmStackReflectance } from '../optics/film-stack.ts';
import { contrastRatio } from '../optics/hiding-power.ts';
import { opaque } from '../optics/opaque.ts';
import { pigmentOf } from '../pigment/pigment-facts.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { blacksOf } from './black-rule.ts';

/** Film thickness on each step, relative to the local colour; highlights stay bare. */
const THICKNESS_FACTORS = [0, 0.4, 1, 1.7, 2.5, 3.4] as const;
/** Range of a glaze: from a veil of one micrometre to 30 in two coats. */
export const THINNEST_MM = 0.001;
export const THICKEST_MM = 0.03;
/** L* by which the glaze deepens the body colour at the local colour, if one coat suffices. */
const DEEPENS = 5;
/** Thickest single coat; thicker films take two. */
export const ONE_COAT_MM = 0.015;

/** A pigment makes a glaze if a film of this thickness has at most this contrast ratio. */
const TEST_MM = 0.02;
const CLEAR = 0.75;
/** Largest hue difference between a glaze and its cloth; yellow over green is within it. */
const AKIN_DEG = 40;

/**
 * Pigments of a shelf that make a glaze: their films show the ground; blacks and whites are
 * excluded.
 */
export function glazesOf(shelf: Shelf): ShelfPaint[] {
  const blacks = blacksOf(shelf);
  return shelf.paints.filter(
    ({ pigment, paint }) =>
      pigment !== shelf.white &&
      pigmentOf(pigment)?.family !== 'white' &&
      !blacks.includes(pigment) &&
      contrastRatio({ parts: [1], paints: [paint], filmMm: TEST_MM }) <= CLEAR,
  );
}

/** The glaze whose film over white is nearest in hue to a cloth; null if none is near enough. */
export function glazeFor(lab: Lab, shelf: Shelf): ShelfPaint | null {
  const wanted = oklabHueDeg(oklabOfLab(lab));
  if (wanted === null) return null;
  const white: Reflectance = spectrum<'R'>();
  white.fill(0.9);
  const ranked = glazesOf(shelf)
    .map((paint) => {
      const seen = glazedColour(paint, ONE_COAT_MM, white, shelf);
      const h = oklabHueDeg(oklabOfLab(seen)) ?? wanted + 180;
      return { paint, away: Math.abs(hueTurnDeg(h, wanted)) };
    })
    .toSorted((p, q) => p.away - q.away);
  return ranked[0] && ranked[0].away <= AKIN_DEG ? ranked[0].paint : null;
}

/** Internal reflectance of an opaque pile, without surface reflection. */
export function internalReflectance(
  recipe: readonly (Share | MixturePart)[],
  shelf: Shelf,
): Reflectance {
  const paints = recipe.map(
    ({ pigment }) => shelf.paints.find((one) => one.pigment === pigment)!.paint,
  );
  const amounts = recipe.map((one) => ('share' in one ? one.share : one.parts));
  return opaque(amounts, paints, spectrum<'R'>());
}

/**
 * Colour of a glaze over an opaque ground, as a film of finite thickness, not a filter. CIELAB
 * under D65.
 */
export function glazedColour(
  { paint }: ShelfPaint,
  filmMm: number,
  ground: Reflectance,
  { surface }: Pick<Shelf, 'surface'>,
): Lab {
  const film = { parts: [1], paints: [paint], filmMm };
  return labOf(filmStackReflectance([film], ground, surface, spectrum<'R'>()));
}

/**
 * Thickness of a glaze over the local colour, by bisection: what deepens the body colour by {@link
 * DEEPENS}, from a veil up to what leaves room for the folds.
 * @returns millimetres
 */
export function glazeThickness(paint: ShelfPaint, ground: Reflectance, shelf: Shelf): number {
  const L = (filmMm: number) => glazedColour(paint, filmMm, ground, shelf)[0];
  const aim = L(0) - DEEPENS;
  const isTooThin = (filmMm: number) => L(filmMm) > aim;
  const most = THICKEST_MM / THICKNESS_FACTORS[5];
  if (isTooThin(most)) return most;
  return bisect(THINNEST_MM, most, isTooThin, 30)[1];
}

/** Least growth factor of the film from step to step. */
const MIN_GROWTH = 1.1;
/**
 * Thinner films to try if the planned one turns the hue: interpolation weights towards the least.
 */
const THINNER = [0.6, 0.3, 0] as const;

/**
 * Thicknesses to try for one step, in millimetres: the planned one, as far as the other films leave
 * room; with `thinner` also thinner ones, down to the least that still grows into the folds.
 * @param laidMm films of the finished steps, by step
 */
export function thinnerFilms(
  i: number,
  plannedMm: number,
  laidMm: readonly (number | undefined)[],
  thinner: boolean,
): readonly number[] {
  let [least, most] = [THINNEST_MM, THICKEST_MM];
  for (const [j, filmMm] of laidMm.entries()) {
    if (filmMm === undefined || j === i) continue;
    if (j < i) least = Math.max(least, filmMm * MIN_GROWTH ** (i - j));
    else most = Math.min(most, filmMm / MIN_GROWTH ** (j - i));
  }
  const planned = Math.min(most, Math.max(least, plannedMm));
  if (!thinner || planned <= least) return [planned];
  return [planned, ...THINNER.map((t) => least * (planned / least) ** t)];
}

/**
 * The six thicknesses in millimetres, within the range of a veil and two coats.
 * @param local thickness over the local colour
 */
export function glazeThicknesses(local: number): readonly number[] {
  let last = 0;
  return THICKNESS_FACTORS.map((factor, i) => {
    if (i === 0) return 0;
    last = Math.min(THICKEST_MM, Math.max(THINNEST_MM, MIN_GROWTH * last, factor * local));
    return last;
  });
}
