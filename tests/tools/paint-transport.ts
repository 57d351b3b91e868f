import { BANDS, type Reflectance, type Spectrum, spectrum } from '../../src/colour/grid.ts';
import type { Paint } from '../../src/optics/opaque.ts';
import type { Surface } from '../../src/optics/surface.ts';

/*
 * How paint looks by the transport of light, for simulations: written without our own optics, which these
 * are to test. Four things are otherwise than there:
 *
 * 1. The film is a half-space in which light is scattered in all directions, not two fluxes up and down.
 *    Its reflectance is (1 − s)(1 − 0.139 s) ÷ (1 + 1.17 s) with s² = absorption ÷ (absorption + scattering):
 *    H. C. van de Hulst, Multiple Light Scattering, 1980 (from memory; checked against the exact theory).
 * 2. Light falls on the paint at 45 degrees and is seen square to it, through a smooth face of index 1.5, by
 *    Fresnel's formulas: F. C. Williams and F. R. Clapper, J. Opt. Soc. Am. 43 (1953) 595 (from memory). What
 *    of the gloss is seen all the same differs from swatch to swatch.
 * 3. White is crowded in its paste: its particles scatter less the nearer they lie, by 1 − (φ ÷ 0.74)^⅓ at a
 *    volume share φ of pigment: F. B. Stieg on the crowding of titanium white (from memory). So one part
 *    of white in nine of a colour scatters more than a ninth of what it does alone, and K and S do not add.
 * 4. Parts are measured out with an error of 5 %, as the study beside the data supposes.
 */

const INDEX = 1.5;
/** Volume share of pigment in the paste of the white. */
const WHITE_PIGMENT = 0.2;
const CLOSEST = 0.74;
/** Gloss that is seen of a usual swatch. */
const GLOSS = 0.02;

/** Share of light that a smooth face lets through, by the angle of incidence in the medium of index `from`. */
function passed(from: number, to: number, sine: number): number {
  const beyond = (from / to) * sine;
  if (beyond >= 1) return 0;
  const [c, d] = [Math.sqrt(1 - sine * sine), Math.sqrt(1 - beyond * beyond)];
  const across = (from * c - to * d) / (from * c + to * d);
  const along = (to * c - from * d) / (to * c + from * d);
  return 1 - (across * across + along * along) / 2;
}

/** Share of evenly scattered light that the face throws back into the paint: 0.596 for an index of 1.5. */
export const THROWN_BACK: number = (() => {
  const steps = 20_000;
  let sum = 0;
  // Over the square of the sine: each equal step of it carries as much light.
  for (let i = 0; i < steps; i++) sum += 1 - passed(INDEX, 1, Math.sqrt((i + 0.5) / steps));
  return sum / steps;
})();
const THROUGH = (passed(1, INDEX, Math.SQRT1_2) * passed(1, INDEX, 0)) / (INDEX * INDEX);

const seenOf = (R: number, gloss: number): number => gloss + (THROUGH * R) / (1 - THROWN_BACK * R);
const insideOf = (seen: number): number => {
  const x = seen - GLOSS;
  return x / (THROUGH + THROWN_BACK * x);
};

/** Reflectance of a half-space. */
export const halfSpace = (absorption: number, scattering: number): number => {
  const s = Math.sqrt(absorption / (absorption + scattering));
  return ((1 - s) * (1 - 0.139 * s)) / (1 + 1.17 * s);
};

/** Absorption of a half-space that reflects R. */
function absorptionOf(R: number, scattering: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const s = (low + high) / 2;
    if (((1 - s) * (1 - 0.139 * s)) / (1 + 1.17 * s) > R) low = s;
    else high = s;
  }
  const s2 = ((low + high) / 2) ** 2;
  return (scattering * s2) / (1 - s2);
}

const crowded = (share: number): number => 1 - Math.cbrt((share * WHITE_PIGMENT) / CLOSEST);

export interface StudioPaints {
  /**
   * How a pile looks, laid opaque.
   * @param parts by volume, one per paint
   * @param normal where given, parts are off by 5 % and the gloss by a third
   */
  lookOf(parts: ArrayLike<number>, normal?: () => number): Reflectance;
}

/**
 * Paints whose masstones look as measured ones do; how they tint and mix is another matter.
 * @param measured K and S, the white first: S gives the scattering (3 ÷ 4 of it, as diffusion has it), the
 *   masstone's reflectance the absorption
 * @param surface with which they were measured
 */
export function studioPaints(measured: readonly Paint[], { k1, k2 }: Surface): StudioPaints {
  const paints = measured.map(({ K, S }, i) => {
    const absorption = new Float64Array(BANDS);
    const scattering = new Float64Array(BANDS);
    for (let band = 0; band < BANDS; band++) {
      const q = K[band]! / S[band]!;
      const inside = 1 / (1 + q + Math.sqrt(q * q + 2 * q));
      const looked = k1 + ((1 - k1) * (1 - k2) * inside) / (1 - k2 * inside);
      const alone = (4 / 3) * S[band]!;
      absorption[band] = absorptionOf(Math.min(insideOf(looked), 0.9999), alone);
      scattering[band] = i === 0 ? alone / crowded(1) : alone;
    }
    return { absorption, scattering };
  });
  return {
    lookOf(parts, normal) {
      const off = () => (normal ? Math.exp(0.05 * normal()) : 1);
      const amounts = paints.map((_, i) => (parts[i]! > 0 ? parts[i]! * off() : 0));
      const total = amounts.reduce((sum, v) => sum + v, 0);
      const gloss = normal ? GLOSS * Math.exp(normal() / 3) : GLOSS;
      const white = crowded(amounts[0]! / total);
      const out: Spectrum<'R'> = spectrum<'R'>();
      for (let band = 0; band < BANDS; band++) {
        let [absorption, scattering] = [0, 0];
        for (const [i, amount] of amounts.entries()) {
          absorption += amount * paints[i]!.absorption[band]!;
          scattering += amount * paints[i]!.scattering[band]! * (i === 0 ? white : 1);
        }
        out[band] = seenOf(halfSpace(absorption, scattering), gloss);
      }
      return out;
    },
  };
}
