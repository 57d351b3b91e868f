import { BANDS, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOfXYZ } from '../../src/colour/lab.ts';
import { D65 } from '../../src/colour/observer.ts';
import type { Shelf, ShelfPaint } from '../../src/pigment/shelf.ts';
import { seeded } from '../colour/random.ts';
import { readShared } from '../shared.ts';

/** A K/S file of the reference data as a shelf. */
export function sharedShelf(file: string): Shelf {
  const lines = readShared(`reference/${file}`).trim().split('\n');
  const comment = (key: string) =>
    lines.find((line) => line.startsWith(`# ${key}: `))?.slice(key.length + 4) ?? '';
  const [k1 = 0, k2 = 0] = comment('surface').split(',').map(Number);
  const rows = new Map<string, { K?: number[]; S?: number[] }>();
  const body = lines.filter((line) => !line.startsWith('#'));
  const flat = BANDS - (body[0]!.split(',').length - 3);
  for (const line of body.slice(1)) {
    const match = /^\d+,("[^"]*"|[^,]*),([KS]),(.*)$/.exec(line);
    if (!match) throw new Error(`not a row: ${line}`);
    const [, name = '', kind, values = ''] = match;
    const numbers = values.split(',').map(Number);
    const whole = [...new Array<number>(flat).fill(numbers[0]!), ...numbers];
    rows.set(name, { ...rows.get(name), [kind as 'K' | 'S']: whole });
  }
  const paints: ShelfPaint[] = [...rows].map(([pigment, { K, S }]) => ({
    pigment,
    label: pigment,
    paint: { K: spectrum<'K'>(K!), S: spectrum<'S'>(S!) },
  }));
  return {
    name: file,
    basis: 'unknown',
    surface: { k1, k2, specular: 'included' },
    white: 'Titanium white',
    paints,
    remarks: [],
  };
}

export const rit = () => sharedShelf('artist-ks-rit2005.csv');
export const delft = () => sharedShelf('oil-ks-delft.csv');

export const withPaints = (shelf: Shelf, names: readonly string[]): Shelf => ({
  ...shelf,
  paints: names.map((name) => {
    const paint = shelf.paints.find((p) => p.pigment === name);
    if (!paint) throw new Error(`no ${name}`);
    return paint;
  }),
});

/** The twelve colours of the study beside the reference data. */
export const TWELVE = [
  'Titanium white',
  'Carbon black',
  'Yellow ochre',
  'Burnt sienna',
  'Raw umber',
  'Arylide yellow opaque',
  'Pyrrole red',
  'Quinacridone crimson',
  'Ultramarine blue',
  'Cobalt blue',
  'Chromium oxide green',
  'Phthalo green (blue shade)',
] as const;

/** Recipes of 2 to 4 colours with parts 1…32, spread evenly in their logarithm. */
export function randomRecipes(shelf: Shelf, count: number, seed: number): Map<string, number>[] {
  const next = seeded(seed);
  return Array.from({ length: count }, () => {
    const n = 2 + Math.floor(next() * 3);
    const recipe = new Map<string, number>();
    while (recipe.size < n) {
      const paint = shelf.paints[Math.floor(next() * shelf.paints.length)]!;
      recipe.set(paint.pigment, Math.exp(next() * Math.log(32)));
    }
    return recipe;
  });
}

/** Munsell colours of value 2-9 and chroma up to 10, from illuminant C adapted to D65 (Bradford). */
export function munsell(count: number, seed: number): Lab[] {
  const rows = readShared('reference/munsell-renotation.csv')
    .trim()
    .split('\n')
    .filter((line) => !line.startsWith('#') && !line.startsWith('hue'))
    .map((line) => line.split(',').slice(1).map(Number))
    .filter(([value = 0, chroma = 0]) => value >= 2 && value <= 9 && chroma <= 10);
  const next = seeded(seed);
  return Array.from({ length: count }, () => {
    const [, , x = 0, y = 1, Y = 0] = rows[Math.floor(next() * rows.length)]!;
    return labUnderD65(x, y, Y * 0.975);
  });
}

type Three = readonly [number, number, number];
// Bradford cone responses (K. M. Lam, 1985; as used by ICC profiles).
const BRADFORD: readonly [Three, Three, Three] = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];
const BACK: readonly [Three, Three, Three] = [
  [0.9869929, -0.1470543, 0.1599627],
  [0.4323053, 0.5183603, 0.0492912],
  [-0.0085287, 0.0400428, 0.9684867],
];
const times = (m: readonly [Three, Three, Three], v: Three): Three => {
  const row = (r: Three) => r[0] * v[0] + r[1] * v[1] + r[2] * v[2];
  return [row(m[0]), row(m[1]), row(m[2])];
};

function labUnderD65(x: number, y: number, Y: number): Lab {
  // Illuminant C, 2 degree: x 0.31006, y 0.31616 (CIE 15).
  const white: Three = [(100 * 0.31006) / 0.31616, 100, (100 * (1 - 0.31006 - 0.31616)) / 0.31616];
  const from = times(BRADFORD, white);
  const to = times(BRADFORD, D65.white);
  const cone = times(BRADFORD, [(Y * x) / y, Y, (Y * (1 - x - y)) / y]);
  const adapted = times(BACK, [
    (cone[0] * to[0]) / from[0],
    (cone[1] * to[1]) / from[1],
    (cone[2] * to[2]) / from[2],
  ]);
  return labOfXYZ(adapted[0], adapted[1], adapted[2], D65.white);
}
