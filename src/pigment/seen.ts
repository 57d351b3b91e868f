import { BANDS, type Reflectance, type Spectrum, spectrum } from '../colour/grid.ts';
import type { Lab } from '../colour/lab.ts';
import { type Paint, ratioOf } from '../optics/opaque.ts';
import { recover } from '../optics/recover.ts';
import { removeSurface, type Surface } from '../optics/surface.ts';
import type { Opacity } from './facts.ts';
import { masstone } from './white.ts';

/**
 * Scattering to be expected of a paint by how it hides, relative to titanium white: the medians of
 * our own curves, whose quarters lie a factor of two to either side. An estimate, no measurement.
 */
export const SCATTERING: Record<Opacity, number> = {
  opaque: 0.46,
  'semi-opaque': 0.19,
  'semi-transparent': 0.09,
  transparent: 0.044,
};

/** A paint of which only the masstone is known. */
export interface SeenPaint {
  readonly paint: Paint;
  /** What it looks like laid opaque. */
  readonly lab: Lab;
  /** False where no paint under this surface can look as asked for; `lab` is then the nearest. */
  readonly exact: boolean;
}

/**
 * K and S of a paint from the colour of its masstone. An opaque film shows K ÷ S alone, so S must come
 * from elsewhere: masstones come out right, tints only as well as S was guessed.
 * @param S of an earlier lot, or one number for all bands (see {@link SCATTERING})
 */
export function paintOfColour(lab: Lab, surface: Surface, S: number | Spectrum<'S'>): SeenPaint {
  const { R, lab: seen, exact } = recover(lab, surface);
  return { paint: paintUnder(R, S), lab: seen, exact };
}

/** {@link paintOfColour} from a measured spectrum of the masstone, 0…1 as seen through the surface. */
export function paintOfMasstone(
  measured: Reflectance,
  surface: Surface,
  S: number | Spectrum<'S'>,
): SeenPaint {
  const { R, clamped } = removeSurface(measured, surface);
  const paint = paintUnder(R, S);
  return { paint, lab: masstone(paint, surface), exact: clamped === 0 };
}

/** K ÷ S = (1 − R)² ÷ 2R of an opaque film (Kubelka and Munk). */
function paintUnder(R: Reflectance, S: number | Spectrum<'S'>): Paint {
  const scattering = typeof S === 'number' ? new Float64Array(BANDS).fill(S) : S;
  return {
    K: spectrum<'K'>(R.map((value, band) => ratioOf(value) * scattering[band]!)),
    S: spectrum<'S'>(scattering),
  };
}
