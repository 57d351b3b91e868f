import { BANDS, type Reflectance, type Spectrum, spectrum } from '../colour/grid.ts';
import type { Lab } from '../colour/lab.ts';
import { type Paint, ratioOf } from '../optics/opaque.ts';
import { recoverReflectance } from '../optics/reflectance-recovery.ts';
import { removeSurface, type Surface } from '../optics/surface.ts';
import { masstone } from './masstone.ts';
import type { Opacity } from './pigment-facts.ts';

/**
 * Typical S of a paint by its opacity, relative to titanium white: medians of the built-in curves,
 * with quartiles a factor of two to either side. An estimate, not a measurement.
 */
export const SCATTERING: Record<Opacity, number> = {
  opaque: 0.46,
  'semi-opaque': 0.19,
  'semi-transparent': 0.09,
  transparent: 0.044,
};

/** A paint estimated from its masstone alone. */
interface MasstonePaint {
  readonly paint: Paint;
  /** Colour of its opaque masstone, seen through the surface. */
  readonly lab: Lab;
  /** False if no paint under this surface has the requested colour; `lab` is then the nearest. */
  readonly exact: boolean;
}

/**
 * Estimates K and S of a paint from the colour of its masstone. An opaque film determines only K ÷
 * S, so S must come from elsewhere: predicted masstones are right, tints only as good as S.
 * @param lab CIELAB, D65
 * @param S   of an earlier lot, or one number for all bands (see {@link SCATTERING})
 * @throws RangeError as recover()
 */
export function paintOfColour(
  lab: Lab,
  surface: Surface,
  S: number | Spectrum<'S'>,
): MasstonePaint {
  const { R, lab: seen, exact } = recoverReflectance(lab, surface);
  return { paint: paintFromRatio(R, S), lab: seen, exact };
}

/**
 * {@link paintOfColour} from a measured spectrum of the masstone, 0…1 as seen through the surface.
 */
export function paintOfMasstone(
  measured: Reflectance,
  surface: Surface,
  S: number | Spectrum<'S'>,
): MasstonePaint {
  const { R, clamped } = removeSurface(measured, surface);
  const paint = paintFromRatio(R, S);
  return { paint, lab: masstone(paint, surface), exact: clamped === 0 };
}

/** K ÷ S = (1 − R)² ÷ 2R of an opaque film (Kubelka and Munk). */
function paintFromRatio(R: Reflectance, S: number | Spectrum<'S'>): Paint {
  const scattering = typeof S === 'number' ? new Float64Array(BANDS).fill(S) : S;
  return {
    K: spectrum<'K'>(R.map((value, band) => ratioOf(value) * scattering[band]!)),
    S: spectrum<'S'>(scattering),
  };
}
