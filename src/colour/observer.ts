import table from './data/weights.json' with { type: 'json' };
import { BANDS, type Reflectance } from './grid.ts';

/** XYZ, scaled so that the perfect diffuser has Y = 100. */
export type XYZ = readonly [X: number, Y: number, Z: number];

/**
 * Tristimulus weights of one illuminant and the CIE 1931 2 degree observer, BANDS values each. The
 * white is the sum of the weights: sample and white must come from the same table.
 */
export interface Light {
  readonly name: 'D65' | 'D50' | 'A';
  readonly X: Float64Array;
  readonly Y: Float64Array;
  readonly Z: Float64Array;
  readonly white: XYZ;
}

function light(name: Light['name']): Light {
  const rows = table.weights[name];
  if (rows.length !== BANDS) throw new RangeError(`${name} has ${rows.length} rows of weights`);
  const column = (i: number) => Float64Array.from(rows, (row) => row[i]!);
  const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0);
  const [X, Y, Z] = [column(0), column(1), column(2)];
  return { name, X, Y, Z, white: [sum(X), sum(Y), sum(Z)] };
}

export const D65 = light('D65');
export const D50 = light('D50');
/** CIE illuminant A: lamp-light. */
export const ILLUMINANT_A = light('A');

/**
 * Tristimulus values of a reflectance under a light, as weighted sums (ASTM E308). The weights
 * outside 380-730 nm are added to the two end bands.
 * @param R   BANDS values 0…1
 * @param out 3 values, overwritten and returned
 */
export function toXYZ(R: Reflectance, under: Light, out: Float64Array): Float64Array {
  const { X: wX, Y: wY, Z: wZ } = under;
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let band = 0; band < BANDS; band++) {
    const r = R[band]!;
    X += r * wX[band]!;
    Y += r * wY[band]!;
    Z += r * wZ[band]!;
  }
  out[0] = X;
  out[1] = Y;
  out[2] = Z;
  return out;
}
