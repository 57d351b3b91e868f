import { Matrix, solve } from 'ml-matrix';
import { BANDS, bandNm, type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { dot } from '../../src/colour/matrix.ts';
import { D65, toXYZ } from '../../src/colour/observer.ts';
import { FROM_XYZ, RGB_WHITE } from '../../src/colour/rgb.ts';

type Rgb = [number, number, number];

/** What makes linear sRGB of a reflectance under a light; the light is one value per band. */
export type Camera = (R: Reflectance, light?: Float64Array) => Rgb;

/** One value per band, from the weights of D65: its power is what all three observers share. */
const daylight = Float64Array.from({ length: BANDS }, (_, band) => {
  // CIE D65 in tens, 380-730 nm, rounded (CIE 015:2018).
  const table = [
    50, 54.6, 82.8, 91.5, 93.4, 86.7, 104.9, 117, 117.8, 114.9, 115.9, 108.8, 109.4, 107.8, 104.8,
    107.7, 104.4, 104, 100, 96.3, 95.8, 88.7, 90, 89.6, 87.7, 83.3, 83.7, 80, 80.2, 82.3, 78.3,
    69.7, 71.6, 74.3, 61.6, 69.9,
  ];
  return table[band]!;
});

/** Lamp-light over daylight, of the same luminance: what a second light adds. */
export const LAMP: Float64Array = (() => {
  const planck = Float64Array.from({ length: BANDS }, (_, band) => {
    const nm = bandNm(band);
    return (
      (560 / nm) ** 5 *
      ((Math.exp(1.435e7 / (2848 * 560)) - 1) / (Math.exp(1.435e7 / (2848 * nm)) - 1))
    );
  });
  const ratio = planck.map((v, band) => (100 * v) / daylight[band]!);
  const Y = ratio.reduce((sum, v, band) => sum + v * D65.Y[band]!, 0) / 100;
  return ratio.map((v) => v / Y);
})();

/** A camera that sees as the observer does: linear sRGB without clipping. */
export const IDEAL: Camera = (R, light) => {
  const lit = light ? spectrum<'R'>(R.map((v, band) => v * light[band]!)) : R;
  const xyz = toXYZ(lit, D65, new Float64Array(3));
  const [X, Y, Z] = RGB_WHITE.map((w, i) => (xyz[i]! * w) / D65.white[i]!) as Rgb;
  return FROM_XYZ.srgb.map((row) => dot(row, X, Y, Z)) as Rgb;
};

/** Peak, spread below and above it in nanometres; the red filter lets some violet through as well. */
const FILTERS: readonly (readonly [peak: number, below: number, above: number])[] = [
  [598, 24, 30],
  [534, 32, 34],
  [462, 25, 28],
];
const VIOLET = { peak: 425, spread: 18, share: 0.07 };

/**
 * A camera of our own invention: sensitivities that are no mixture of the observer's, under daylight,
 * balanced to white, and the matrix that brings a chart nearest to what the observer sees of it. Neither is
 * fitted to any pigment. In daylight a matrix leaves a mean CIEDE2000 of 0.85 of the chart, as it leaves 1.01
 * of a real camera's (tests/published/calibration-chart.test.ts).
 * @param chart reflectances of its patches
 */
export function chartCamera(chart: readonly Reflectance[]): Camera {
  const bell = (x: number) => Math.exp(-0.5 * x * x);
  const sensitivity = FILTERS.map(([peak, below, above], c) =>
    Float64Array.from({ length: BANDS }, (_, band) => {
      const off = bandNm(band) - peak;
      const violet =
        c === 0 ? VIOLET.share * bell((bandNm(band) - VIOLET.peak) / VIOLET.spread) : 0;
      return bell(off / (off < 0 ? below : above)) + violet;
    }),
  );
  const raw = (R: ArrayLike<number>, light?: Float64Array): Rgb =>
    sensitivity.map((s) => {
      let [seen, white] = [0, 0];
      for (let band = 0; band < BANDS; band++) {
        const power = s[band]! * daylight[band]!;
        seen += power * R[band]! * (light ? light[band]! : 1);
        white += power;
      }
      return seen / white;
    }) as Rgb;
  const flat = spectrum<'R'>(new Float64Array(BANDS).fill(0.9));
  // Twenty times the white: no maker lets white drift.
  const training = [...chart, ...Array.from({ length: 20 }, () => flat)];
  const matrix = solve(
    new Matrix(training.map((R) => raw(R))),
    new Matrix(training.map((R) => IDEAL(R))),
    true,
  );
  return (R, light) => {
    const seen = raw(R, light);
    return [0, 1, 2].map((c) => seen.reduce((sum, v, i) => sum + v * matrix.get(i, c), 0)) as Rgb;
  };
}
