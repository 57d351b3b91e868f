import { type Reflectance, spectrum } from '../colour/grid.ts';
import { hueTurnDeg, type Lab, labOf } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import type { Part, Share } from '../mixture/mixture.ts';
import { contrastRatio } from '../optics/opacity.ts';
import { opaque } from '../optics/opaque.ts';
import { stack } from '../optics/stack.ts';
import { pigmentOf } from '../pigment/facts.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { blacksOf } from './black.ts';

/** Thickness of the glaze over each step, beside that over the local colour: the gleams are left bare. */
export const GROWS = [0, 0.4, 1, 1.7, 2.5, 3.4] as const;
/** A glaze is laid from a veil of one micrometre up to 30 in two coats. */
export const THINNEST_MM = 0.001;
export const THICKEST_MM = 0.03;
/** Over the local colour it deepens the body colour by so much L*, if one coat does. */
const DEEPENS = 5;
/** Above this the glaze is laid in two coats. */
export const ONE_COAT_MM = 0.015;

/** A film of this thickness that hides no more than this lets the underpaint speak. */
const TEST_MM = 0.02;
const CLEAR = 0.75;
/** A glaze is of its cloth's hue up to here; yellow over green lies within it. */
const AKIN_DEG = 40;

/** Pigments of a shelf that make a glaze: films of them let the ground through; blacks do not count. */
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

/** The glaze whose film over white comes nearest to a cloth's hue; null where none is akin. */
export function glazeFor(lab: Lab, shelf: Shelf): ShelfPaint | null {
  const wanted = oklabHueDeg(oklabOfLab(lab));
  if (wanted === null) return null;
  const white: Reflectance = spectrum<'R'>();
  white.fill(0.9);
  const ranked = glazesOf(shelf)
    .map((paint) => {
      const seen = filmOver(paint, ONE_COAT_MM, white, shelf);
      const h = oklabHueDeg(oklabOfLab(seen)) ?? wanted + 180;
      return { paint, away: Math.abs(hueTurnDeg(h, wanted)) };
    })
    .toSorted((p, q) => p.away - q.away);
  return ranked[0] && ranked[0].away <= AKIN_DEG ? ranked[0].paint : null;
}

/** Internal reflectance of a pile laid opaque. */
export function insideOf(recipe: readonly (Share | Part)[], shelf: Shelf): Reflectance {
  const paints = recipe.map(
    ({ pigment }) => shelf.paints.find((one) => one.pigment === pigment)!.paint,
  );
  const amounts = recipe.map((one) => ('share' in one ? one.share : one.parts));
  return opaque(amounts, paints, spectrum<'R'>());
}

/** What is seen of a glaze over an opaque ground: a finite film, not a filter. CIELAB, D65. */
export function filmOver(
  { paint }: ShelfPaint,
  filmMm: number,
  ground: Reflectance,
  { surface }: Pick<Shelf, 'surface'>,
): Lab {
  const film = { parts: [1], paints: [paint], filmMm };
  return labOf(stack([film], ground, surface, spectrum<'R'>()));
}

/**
 * Thickness of a glaze over the local colour: what deepens a body colour by {@link DEEPENS}, within a
 * veil and what leaves room for the folds. Thickness only ever grows from there.
 */
export function filmFor(paint: ShelfPaint, ground: Reflectance, shelf: Shelf): number {
  const L = (filmMm: number) => filmOver(paint, filmMm, ground, shelf)[0];
  const aim = L(0) - DEEPENS;
  let [low, high] = [THINNEST_MM, THICKEST_MM / GROWS[5]];
  if (L(high) > aim) return high;
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (L(middle) > aim) low = middle;
    else high = middle;
  }
  return high;
}

/** A film grows by this factor at least from step to step. */
const GROWTH = 1.1;
/** Thinner films that are tried where the planned one turns the hue. */
const THINNER = [0.6, 0.3, 0] as const;

/**
 * Thicknesses for one step: as planned, as far as those laid already leave room; where `thinner` is asked
 * for then towards the least by which the film still grows into the folds.
 * @param laidMm films of the steps laid already, by step
 */
export function thinnings(
  i: number,
  plannedMm: number,
  laidMm: readonly (number | undefined)[],
  thinner: boolean,
): readonly number[] {
  let [least, most] = [THINNEST_MM, THICKEST_MM];
  for (const [j, filmMm] of laidMm.entries()) {
    if (filmMm === undefined || j === i) continue;
    if (j < i) least = Math.max(least, filmMm * GROWTH ** (i - j));
    else most = Math.min(most, filmMm / GROWTH ** (j - i));
  }
  const planned = Math.min(most, Math.max(least, plannedMm));
  if (!thinner || planned <= least) return [planned];
  return [planned, ...THINNER.map((t) => least * (planned / least) ** t)];
}

/** The six thicknesses, none beyond what a veil and two coats can be. */
export function filmsOf(local: number): readonly number[] {
  let last = 0;
  return GROWS.map((factor, i) => {
    if (i === 0) return 0;
    last = Math.min(THICKEST_MM, Math.max(THINNEST_MM, GROWTH * last, factor * local));
    return last;
  });
}
