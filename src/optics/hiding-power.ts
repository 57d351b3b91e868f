import { bisect } from '../bisection.ts';
import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';
import { D65, toXYZ } from '../colour/observer.ts';
import { type Film, filmOverGround } from './film.ts';
import { addSurface, NO_SURFACE, type Surface } from './surface.ts';

/**
 * Internal reflectance of a contrast chart's white: 0.80, as in Kubelka's and the paint trade's
 * tests.
 */
const CHART_WHITE = 0.8;
/**
 * A film whose Y (white = 100) over white is below this is black over any ground, so it hides.
 */
const BLACK_Y = 1e-6;
const flat = (R: number): Reflectance => spectrum<'R'>(new Float64Array(BANDS).fill(R));

/**
 * Contrast ratio of a film: luminous reflectance over black divided by that over white (0.80), 0…1;
 * 1 hides completely.
 * @param surface included in both reflectances; none by default, as in the trade's figure
 * @throws RangeError as film()
 */
export function contrastRatio(over: Film, surface: Surface = NO_SURFACE): number {
  const Y = (Rg: number) => {
    const R = filmOverGround(over, flat(Rg), spectrum<'R'>());
    return toXYZ(addSurface(R, surface), D65, new Float64Array(3))[1]!;
  };
  const white = Y(CHART_WHITE);
  return white < BLACK_Y ? 1 : Y(0) / white;
}

/**
 * Smallest film thickness in millimetres that hides the ground: contrast ratio at least `contrast`.
 * @param contrast 0…1, both excluded; 0.98 is the trade's "hides"
 * @returns Infinity when no film up to a metre hides (paint that neither absorbs nor scatters)
 * @throws RangeError as film(), and for a contrast outside 0…1
 */
export function hidingFilmMm(paint: Omit<Film, 'filmMm'>, contrast = 0.98): number {
  if (!(contrast > 0 && contrast < 1)) throw new RangeError(`a contrast ratio of ${contrast}`);
  const hides = (filmMm: number) => contrastRatio({ ...paint, filmMm }) >= contrast;
  let thick = 1e-3;
  while (!hides(thick)) {
    thick *= 2;
    if (thick > 1000) return Number.POSITIVE_INFINITY;
  }
  // Contrast rises with thickness, so a bisection cannot miss it; it ends at a millionth of the answer.
  const [, enough] = bisect(
    0,
    thick,
    (filmMm) => !hides(filmMm),
    Number.POSITIVE_INFINITY,
    (thin, hiding) => hiding - thin <= 1e-6 * hiding,
  );
  return enough;
}
