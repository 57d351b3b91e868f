import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';
import { labOf } from '../colour/lab.ts';
import { curvePrior, type PaintPrior } from './curve-prior.ts';
import type { ParametricObservations } from './fit-cost.ts';
import { fitExperiment, type PaintFit } from './fit-paints.ts';
import { type Paint, PER_MM } from './opaque.ts';
import { removeSurface, type Surface } from './surface.ts';
import { predictReflectance, type Swatch } from './swatch-residuals.ts';

/** A measured wash of one or more watercolours on white paper. */
export interface Wash {
  /** Amount of each paint, one per pigment, each ≥ 0, not all 0; in one unit for all washes. */
  readonly amounts: ArrayLike<number>;
  /** Measured reflectance. */
  readonly R: Reflectance;
}

/** Weights of a fit of washes. */
export interface WashOptions {
  /** Weight of a single-pigment wash; a mixture has weight 1. Without mixtures it is 1. */
  readonly singles: number;
  /** Constant of the Cauchy loss: see FitOptions. */
  readonly robust: number;
}

export const WASH_OPTIONS: WashOptions = { singles: 0.2, robust: 6 };

/** Watercolours fitted to washes, with the fitted parameters of brush, paper and surface. */
export interface Washes {
  /** One per pigment, then the paper fibre; K and S per unit of thickness (see `exponents`). */
  readonly paints: readonly Paint[];
  /** One per pigment: thickness is (amount ÷ {@link WASH_AMOUNT_UNIT}) to this power. */
  readonly exponents: Float64Array;
  /** Thickness of the paper fibre inside the film, which scatters 1 per unit. */
  readonly fibre: number;
  readonly surface: Surface;
  /** Measured reflectance of the bare paper. */
  readonly paper: Reflectance;
  readonly fit: PaintFit;
}

/** Unit of amounts (millilitres in the published data), chosen so that K and S are of order 1. */
const WASH_AMOUNT_UNIT = 0.04;

/** Standard deviation of each of L*, a*, b* of a wash that follows the model. */
const LAB_SD = 2;
/**
 * Standard deviation of each band in units of L*. Large, because the errors of neighbouring bands
 * are correlated: all bands together weigh as much as one colour.
 */
const BAND_SD = 12;

const even = (value: number): Float64Array => new Float64Array(BANDS).fill(value);
const PRIOR: PaintPrior = {
  K: curvePrior(even(0), { level: 2, shape: 1.5, lengthNm: 90 }),
  S: curvePrior(even(-1), { level: 0.7, shape: 0.5, lengthNm: 150 }),
};

/** Paper fibre inside the paint film: it scatters and does not absorb. */
const FIBRE: Paint = { K: spectrum<'K'>(), S: spectrum<'S'>(even(1)) };

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
const logit = (y: number): number => Math.log(y / (1 - y));
/** Upper limits of the fitted k1 and k2. */
const K1_BELOW = 0.1;
const K2_BELOW = 0.9;

/**
 * Settings: an exponent per pigment, then k1, k2 (logistic) and fibre (ln), valid for any real
 * number.
 */
const settingsOf = (pigments: number): ParametricObservations['settings'] => [
  ...Array.from({ length: pigments }, () => ({ start: 0.9, sd: 0.1 })),
  // A matt film measured without glare shows little of k1.
  { start: logit(0.02 / K1_BELOW), sd: 0.05 },
  // k2 is 0.6 for diffuse light inside a binder of index 1.5 (Fresnel's equations).
  { start: logit(0.6 / K2_BELOW), sd: 0.05 },
  { start: Math.log(0.4), sd: 0.1 },
];

function decodeSettings(settings: Float64Array): Pick<Washes, 'exponents' | 'surface' | 'fibre'> {
  const count = settings.length - 3;
  const surface: Surface = {
    k1: K1_BELOW * logistic(settings[count]!),
    k2: K2_BELOW * logistic(settings[count + 1]!),
    specular: 'included',
  };
  return { exponents: settings.slice(0, count), surface, fibre: Math.exp(settings[count + 2]!) };
}

/** The film of a wash: its paints and the fibre between them, over the paper. */
function filmOf(
  amounts: ArrayLike<number>,
  { exponents, fibre }: Pick<Washes, 'exponents' | 'fibre'>,
  ground: Reflectance,
): Pick<Swatch, 'parts'> & Required<Pick<Swatch, 'film'>> {
  const parts = new Float64Array(amounts.length + 1);
  let sum = fibre;
  for (let i = 0; i < amounts.length; i++) {
    if (amounts[i]! > 0) parts[i] = (amounts[i]! / WASH_AMOUNT_UNIT) ** exponents[i]!;
    sum += parts[i]!;
  }
  parts[amounts.length] = fibre;
  return { parts, film: { filmMm: sum / PER_MM, ground } };
}

const isSingle = ({ amounts }: Wash): boolean =>
  Array.from(amounts).filter((amount) => amount > 0).length === 1;

/**
 * Models watercolours as Kubelka-Munk films over paper and fits K and S jointly to all washes. Also
 * fitted: an exponent per pigment (twice the amount does not give twice the thickness), the
 * surface, and the scattering of the paper fibre inside the film.
 *
 * @param pigments their number; every wash has as many amounts
 * @param paper    measured reflectance of the bare paper
 * @param from     earlier fit of the same pigments, used as the start
 * @throws RangeError for an invalid wash
 */
export function fitWashes(
  pigments: number,
  paper: Reflectance,
  washes: readonly Wash[],
  options: WashOptions = WASH_OPTIONS,
  from?: Washes,
): Washes {
  const singles = washes.every(isSingle) ? 1 : options.singles;
  const observed = washes.map((wash) => ({
    amounts: wash.amounts,
    lab: { lab: labOf(wash.R), sd: LAB_SD },
    spectrum: { R: wash.R, sd: BAND_SD },
    weight: isSingle(wash) ? singles : 1,
  }));
  const experiment: ParametricObservations = {
    settings: settingsOf(pigments),
    at: (settings) => {
      const found = decodeSettings(settings);
      const ground = removeSurface(paper, found.surface).R;
      const swatches = observed.map(({ amounts, ...wash }) => ({
        ...wash,
        ...filmOf(amounts, found, ground),
      }));
      return { swatches, surface: found.surface };
    },
  };
  const paints = Array.from({ length: pigments }, (_, i) =>
    from ? { prior: PRIOR, start: from.paints[i]! } : { prior: PRIOR },
  );
  const fit = fitExperiment(experiment, [...paints, { known: FIBRE }], {
    robust: options.robust,
    tolerance: 1e-4,
    detail: 1e-3,
  });
  return { paints: fit.paints, ...decodeSettings(fit.settings), paper, fit };
}

/** Predicted reflectance of a wash, seen through the surface, in a new spectrum. */
export function predictWash(amounts: ArrayLike<number>, washes: Washes): Reflectance {
  const ground = removeSurface(washes.paper, washes.surface).R;
  return predictReflectance(filmOf(amounts, washes, ground), washes.paints, washes.surface);
}
