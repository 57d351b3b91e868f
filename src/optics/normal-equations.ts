import { Matrix } from 'ml-matrix';
import { BANDS, type Reflectance } from '../colour/grid.ts';
import type { Unknowns } from './fit-unknowns.ts';
import { type Paint, PER_MM, sumOfParts } from './opaque.ts';
import { filmSlopes, opaqueSlopes } from './reflectance-derivatives.ts';
import { type Surface, surfaceSlope } from './surface.ts';
import { bandSlope, labSlopes, type Swatch, type SwatchResiduals } from './swatch-residuals.ts';

/** One swatch in the current state of the fit. */
export interface SwatchResidual {
  readonly swatch: Swatch;
  readonly expected: Reflectance;
  readonly misfit: SwatchResiduals;
  /** The swatch's own weight times its weight in the robust cost. */
  readonly weight: number;
  /** d expected ÷ d setting, one spectrum per setting. */
  readonly settingSlopes: readonly Float64Array[];
}

/**
 * Gauss-Newton normal equations of the fit: `matrix` · step = `gradient`, without the priors. A
 * spectrum couples the curves band by band, so its products are summed per band first and
 * transformed into the priors' coordinates once. A colour couples all bands through three residuals
 * per swatch.
 * @returns a new symmetric matrix, `unknowns.size` square, and a gradient of as many values
 */
export function normalEquations(
  readings: readonly SwatchResidual[],
  paints: readonly Paint[],
  surface: Surface,
  unknowns: Unknowns,
): { matrix: Matrix; gradient: Float64Array } {
  const { curves, settingsAt, size } = unknowns;
  const settings = size - settingsAt;
  const H = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  const columns = curves.length + settings;
  const perBand: (Float64Array | undefined)[] = new Array(columns * columns);
  const perBandGradient = Array.from({ length: columns }, () => new Float64Array(BANDS));

  for (const reading of readings) {
    const { swatch, misfit, weight, expected } = reading;
    const slopes = slopesOf(swatch, paints, surface, unknowns);
    reading.settingSlopes.forEach((slope, k) => {
      slopes.push({ column: curves.length + k, slope });
    });

    if (swatch.spectrum) {
      const scale = expected.map((R) => bandSlope(R, swatch.spectrum!.sd));
      for (const a of slopes) {
        const g = perBandGradient[a.column]!;
        for (let band = 0; band < BANDS; band++)
          g[band]! += weight * misfit.spectrum[band]! * scale[band]! * a.slope[band]!;
        for (const b of slopes) {
          if (b.column < a.column) continue;
          const at = a.column * columns + b.column;
          perBand[at] ??= new Float64Array(BANDS);
          const sum = perBand[at];
          for (let band = 0; band < BANDS; band++)
            sum[band]! += weight * scale[band]! ** 2 * a.slope[band]! * b.slope[band]!;
        }
      }
    }
    if (swatch.lab) {
      const toLab = labSlopes(expected, swatch.lab);
      const blocks = slopes.map((s) => labBlock(toLab, s, unknowns));
      addColourResiduals(H, gradient, size, blocks, misfit.lab, weight);
    }
  }
  addBands(H, gradient, perBand, perBandGradient, unknowns);
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) H[i * size + j] = H[j * size + i]!;
  return { matrix: Matrix.from1DArray(size, size, H), gradient };
}

/**
 * Derivative of the expected reflectance, per band, by the logarithm of a curve or by a setting.
 */
interface Slope {
  readonly column: number;
  readonly slope: Float64Array;
}

function slopesOf(
  { parts, film }: Swatch,
  paints: readonly Paint[],
  surface: Surface,
  { curveOf }: Unknowns,
): Slope[] {
  const thickness = film ? (film.filmMm * PER_MM) / sumOfParts(parts, paints.length) : 1;
  const active: number[] = [];
  for (let i = 0; i < paints.length; i++) if (parts[i]! > 0) active.push(i);
  const fitted = active.filter((i) => curveOf[i]! >= 0);
  const out = fitted.flatMap((i): Slope[] => [
    { column: curveOf[i]!, slope: new Float64Array(BANDS) },
    { column: curveOf[i]! + 1, slope: new Float64Array(BANDS) },
  ]);
  const found = { R: 0, dlnK: 0, dlnS: 0 };
  for (let band = 0; band < BANDS; band++) {
    let K = 0;
    let S = 0;
    for (const i of active) {
      K += parts[i]! * paints[i]!.K[band]!;
      S += parts[i]! * paints[i]!.S[band]!;
    }
    if (film) filmSlopes(K * thickness, S * thickness, film.ground[band]!, found);
    else opaqueSlopes(K, S, found);
    const through = surfaceSlope(found.R, surface);
    fitted.forEach((i, at) => {
      // d ln K of the mixture ÷ d ln Kᵢ is the paint's share of K.
      out[2 * at]!.slope[band] = (through * found.dlnK * parts[i]! * paints[i]!.K[band]!) / K;
      out[2 * at + 1]!.slope[band] = (through * found.dlnS * parts[i]! * paints[i]!.S[band]!) / S;
    });
  }
  return out;
}

/** Derivatives of L*, a*, b* by the coordinates of one column. */
interface Block {
  readonly offset: number;
  readonly size: number;
  /** Row-major, three rows of `size` values. */
  readonly rows: Float64Array;
}

function labBlock(toLab: Float64Array, { column, slope }: Slope, unknowns: Unknowns): Block {
  const curve = unknowns.curves[column];
  const size = curve ? curve.basis.size : 1;
  const rows = new Float64Array(3 * size);
  for (let axis = 0; axis < 3; axis++)
    for (let band = 0; band < BANDS; band++) {
      const each = toLab[axis * BANDS + band]! * slope[band]!;
      if (curve)
        for (let k = 0; k < size; k++)
          rows[axis * size + k]! += each * curve.basis.rows[band * size + k]!;
      else rows[axis]! += each;
    }
  const offset = curve ? curve.offset : unknowns.settingsAt + column - unknowns.curves.length;
  return { offset, size, rows };
}

/** Adds the three residuals of a colour to the upper triangle of H and to the gradient. */
function addColourResiduals(
  H: Float64Array,
  gradient: Float64Array,
  size: number,
  blocks: readonly Block[],
  misfit: readonly number[],
  weight: number,
): void {
  for (const a of blocks)
    for (let axis = 0; axis < 3; axis++)
      for (let i = 0; i < a.size; i++) {
        const left = weight * a.rows[axis * a.size + i]!;
        gradient[a.offset + i]! += left * misfit[axis]!;
        const row = (a.offset + i) * size;
        for (const b of blocks) {
          if (b.offset < a.offset) continue;
          const at = axis * b.size;
          for (let j = 0; j < b.size; j++) H[row + b.offset + j]! += left * b.rows[at + j]!;
        }
      }
}

/** Transforms the sums per band into the coordinates of their columns and adds them. */
function addBands(
  H: Float64Array,
  gradient: Float64Array,
  perBand: readonly (Float64Array | undefined)[],
  perBandGradient: readonly Float64Array[],
  unknowns: Unknowns,
): void {
  const columns = perBandGradient.length;
  const ones = new Float64Array(BANDS).fill(1);
  const place = (column: number) => {
    const curve = unknowns.curves[column];
    return curve
      ? { offset: curve.offset, size: curve.basis.size, rows: curve.basis.rows }
      : { offset: unknowns.settingsAt + column - unknowns.curves.length, size: 1, rows: ones };
  };
  const places = perBandGradient.map((_, column) => place(column));
  for (let c = 0; c < columns; c++) {
    const a = places[c]!;
    for (let band = 0; band < BANDS; band++)
      for (let i = 0; i < a.size; i++)
        gradient[a.offset + i]! += perBandGradient[c]![band]! * a.rows[band * a.size + i]!;
    for (let d = c; d < columns; d++) {
      const sum = perBand[c * columns + d];
      if (!sum) continue;
      const b = places[d]!;
      for (let band = 0; band < BANDS; band++)
        for (let i = 0; i < a.size; i++) {
          const left = sum[band]! * a.rows[band * a.size + i]!;
          const row = (a.offset + i) * unknowns.size + b.offset;
          for (let j = 0; j < b.size; j++) H[row + j]! += left * b.rows[band * b.size + j]!;
        }
    }
  }
}
