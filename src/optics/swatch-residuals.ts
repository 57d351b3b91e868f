import { BANDS, type Reflectance, spectrum } from '../colour/grid.ts';
import { type Lab, labF, labOfXYZ } from '../colour/lab.ts';
import { D65, type Light, toXYZ } from '../colour/observer.ts';
import { type Film, filmOverGround } from './film.ts';
import { opaque, type Paint, sumOfParts } from './opaque.ts';
import { addSurface, type Surface } from './surface.ts';

/** A painted sample: its composition and its observed colour or spectrum. */
export interface Swatch {
  /** By volume, one per paint of the fit, each ≥ 0, not all 0. */
  readonly parts: ArrayLike<number>;
  /** A film of known thickness over a known ground; if left out, the swatch is opaque. */
  readonly film?: {
    readonly filmMm: number;
    /** As seen from inside the paint (a measured ground goes through removeSurface first). */
    readonly ground: Reflectance;
  };
  /**
   * Observed colour and the standard deviation of each of L*, a*, b*; `light` is D65 by default.
   */
  readonly lab?: { readonly lab: Lab; readonly sd: number; readonly light?: Light };
  /**
   * Measured reflectance and the standard deviation of one band in units of L*: each band is
   * compared as the lightness of a grey of that reflectance.
   */
  readonly spectrum?: { readonly R: Reflectance; readonly sd: number };
  /** Weight in the fit; default 1. */
  readonly weight?: number;
}

/** Validates a swatch of `paints` paints. @throws RangeError naming the error and the `index` */
export function checkSwatch(swatch: Swatch, paints: number, index: number): void {
  const wrong = (what: string) => new RangeError(`swatch ${index}: ${what}`);
  sumOfParts(swatch.parts, paints);
  const { film, lab, spectrum, weight = 1 } = swatch;
  if (!lab && !spectrum) throw wrong('neither a colour nor a spectrum was seen');
  for (const seen of [lab, spectrum])
    if (seen && !(seen.sd > 0 && seen.sd < Number.POSITIVE_INFINITY))
      throw wrong(`a standard deviation of ${seen.sd}`);
  if (lab && !lab.lab.every(Number.isFinite)) throw wrong(`a colour of ${lab.lab.join(', ')}`);
  if (spectrum && !spectrum.R.every(Number.isFinite)) throw wrong('a spectrum with gaps');
  if (film && !(film.filmMm >= 0 && film.filmMm < Number.POSITIVE_INFINITY))
    throw wrong(`a film ${film.filmMm} mm thick`);
  if (film && !film.ground.every((Rg) => Rg >= 0 && Rg <= 1)) throw wrong('a ground outside 0…1');
  if (!(weight > 0 && weight < Number.POSITIVE_INFINITY)) throw wrong(`a weight of ${weight}`);
}

/**
 * Predicted reflectance of a swatch of these paints, seen through the surface, in a new spectrum.
 * @throws RangeError as film(), opaque() and addSurface()
 */
export function predictReflectance(
  { parts, film: laid }: Pick<Swatch, 'parts' | 'film'>,
  paints: readonly Paint[],
  surface: Surface,
): Reflectance {
  const out = spectrum<'R'>();
  if (laid) {
    const whole: Film = { parts, paints, filmMm: laid.filmMm };
    filmOverGround(whole, laid.ground, out);
  } else {
    opaque(parts, paints, out);
  }
  return addSurface(out, surface);
}

/** Residuals of an expected reflectance from the observation, in standard deviations. */
export interface SwatchResiduals {
  /** Of L*, a*, b*; empty without an observed colour. */
  readonly lab: readonly number[];
  /** One per band; empty without an observed spectrum. */
  readonly spectrum: Float64Array;
  /** Sum of all squares. */
  readonly square: number;
}

const NONE = new Float64Array(0);
const xyz = new Float64Array(3);

/** Residuals of a predicted reflectance (seen through the surface) for a swatch. */
export function residualsOf(expected: Reflectance, { lab, spectrum }: Swatch): SwatchResiduals {
  let square = 0;
  let off: number[] = [];
  if (lab) {
    const light = lab.light ?? D65;
    toXYZ(expected, light, xyz);
    const found = labOfXYZ(xyz[0]!, xyz[1]!, xyz[2]!, light.white);
    off = found.map((v, i) => (v - lab.lab[i]!) / lab.sd);
    for (const v of off) square += v * v;
  }
  let bands = NONE;
  if (spectrum) {
    bands = new Float64Array(BANDS);
    for (let band = 0; band < BANDS; band++) {
      const v = (116 * (labF(expected[band]!) - labF(spectrum.R[band]!))) / spectrum.sd;
      bands[band] = v;
      square += v * v;
    }
  }
  return { lab: off, spectrum: bands, square };
}

/** Derivative of labF(), continuous at the limit of its two branches. */
const labSlope = (t: number): number =>
  t > 216 / 24389 ? 1 / (3 * Math.cbrt(t) ** 2) : 24389 / 27 / 116;

/** d(L*, a*, b*) ÷ dR per band, divided by the standard deviation: 3 rows of BANDS values. */
export function labSlopes(expected: Reflectance, lab: NonNullable<Swatch['lab']>): Float64Array {
  const light = lab.light ?? D65;
  toXYZ(expected, light, xyz);
  const [x, y, z] = light.white.map((white, i) => labSlope(xyz[i]! / white) / white / lab.sd);
  const out = new Float64Array(3 * BANDS);
  for (let band = 0; band < BANDS; band++) {
    const fx = x! * light.X[band]!;
    const fy = y! * light.Y[band]!;
    const fz = z! * light.Z[band]!;
    out[band] = 116 * fy;
    out[BANDS + band] = 500 * (fx - fy);
    out[2 * BANDS + band] = 200 * (fy - fz);
  }
  return out;
}

/** d misfit ÷ dR of one band of a spectrum, at its expected reflectance. */
export const bandSlope = (expected: number, sd: number): number => (116 * labSlope(expected)) / sd;
