import { BANDS, bandNm, spectrum } from '../../src/colour/grid.ts';
import type { Shelf, ShelfPaint } from '../../src/pigment/shelf.ts';
import { seeded } from '../colour/random.ts';

/** A paint that absorbs around a wavelength, or below it (an edge), with constant scattering. */
function paint(pigment: string, S: number, absorb: (nm: number) => number): ShelfPaint {
  return {
    pigment,
    label: pigment,
    paint: {
      K: spectrum<'K'>(Array.from({ length: BANDS }, (_, b) => absorb(bandNm(b)))),
      S: spectrum<'S'>(new Array<number>(BANDS).fill(S)),
    },
  };
}
const edge =
  (at: number, high: number, low: number, width = 12) =>
  (nm: number) =>
    low + (high - low) / (1 + Math.exp((nm - at) / width));
const band =
  (at: number, high: number, low: number, width = 45) =>
  (nm: number) =>
    low + high * Math.exp(-(((nm - at) / width) ** 2));

/** A small shelf of our own invention; its figures stand for nothing real. */
export const invented: Shelf = {
  name: 'invented',
  basis: 'volume',
  surface: { k1: 0.03, k2: 0.65, specular: 'included' },
  white: 'white',
  paints: [
    paint('white', 1, edge(400, 0.3, 0.0008, 6)),
    paint('black', 0.25, () => 4),
    paint('red', 0.3, edge(595, 1.6, 0.004)),
    paint('yellow', 0.5, edge(510, 1.4, 0.003)),
    paint('blue', 0.04, band(600, 1.5, 0.01)),
    paint('green', 0.08, (nm) => edge(480, 0.9, 0.01)(nm) + band(660, 1.6, 0)(nm)),
    paint('earth', 0.15, edge(570, 0.9, 0.06, 30)),
    paint('chalk', 0.06, () => 0.002),
  ],
  remarks: [],
};

/** As many paints as wanted, seeded. */
export function manyPaints(count: number): Shelf {
  const next = seeded(17);
  const more = Array.from({ length: count - invented.paints.length }, (_, i) => {
    const [at, high, low, S] = [450 + 220 * next(), 0.2 + 2 * next(), 0.1 * next(), 0.02 + next()];
    const absorb = next() < 0.5 ? edge(at, high, low, 10 + 30 * next()) : band(at, high, low);
    return paint(`paint ${i}`, S, absorb);
  });
  return { ...invented, paints: [...invented.paints, ...more] };
}
