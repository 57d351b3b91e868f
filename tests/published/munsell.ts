import { adaptationMatrix } from '../../src/colour/adaptation.ts';
import { type Lab, labOfXYZ, xyzOfLab } from '../../src/colour/lab.ts';
import { multiplyColumn } from '../../src/colour/matrix.ts';
import { valueOfY, yOfValue } from '../../src/colour/munsell-value.ts';
import type { XYZ } from '../../src/colour/observer.ts';
import { RGB_WHITE } from '../../src/colour/rgb.ts';
import { readSharedJson } from '../shared.ts';

/**
 * The Munsell renotation (Newhall, Nickerson, Judd, J. Opt. Soc. Am. 33 (1943) 385, with the Munsell
 * laboratory's extrapolation) and the ISCC-NBS names (Kelly & Judd, NBS Special Publication 440,
 * 1976), for checks only: the tables stand beside the project.
 */
export interface Notation {
  /** ASTM hue number: 5R = 5, 5YR = 15 … 5RP = 95. */
  readonly H: number;
  readonly V: number;
  readonly C: number;
}

export interface NamedCentroid extends Notation {
  readonly number: number;
  readonly level3: string;
  readonly level2: string;
}

type XY = readonly [number, number];
interface HueRow {
  readonly real_max_chroma: number | null;
  readonly xy: readonly XY[];
}

const FAMILIES = ['R', 'YR', 'Y', 'GY', 'G', 'BG', 'B', 'PB', 'P', 'RP'];

/** Reads "5.5YR 4/6" or "N 4.7/". */
export function parseNotation(text: string): Notation {
  const neutral = /^N ?([\d.]+)\/?$/.exec(text);
  if (neutral) return { H: 5, V: Number(neutral[1]), C: 0 };
  const match = /^([\d.]+)([A-Z]+) ([\d.]+)\/([\d.]+)$/.exec(text);
  if (!match) throw new Error(`${text} is not a Munsell notation`);
  const H = Number(match[1]) + 10 * FAMILIES.indexOf(match[2]!);
  return { H, V: Number(match[3]), C: Number(match[4]) };
}

export function readMunsell() {
  const table = readSharedJson('reference/munsell-renotation-extended.json');
  const names = readSharedJson('reference/iscc-nbs.json');
  const white: XY = table.white_C_xy;
  const whiteC: XYZ = [
    (100 * white[0]) / white[1],
    100,
    (100 * (1 - white[0] - white[1])) / white[1],
  ];
  const toD65 = adaptationMatrix(whiteC, RGB_WHITE, 'bradford');
  const toC = adaptationMatrix(RGB_WHITE, whiteC, 'bradford');
  const planes = new Map<number, Map<number, HueRow>>();
  for (const [V, rows] of Object.entries(table.planes as Record<string, Record<string, HueRow>>))
    planes.set(Number(V), new Map(Object.entries(rows).map(([H, row]) => [Number(H), row])));
  const values = [...planes.keys()].sort((x, y) => x - y);

  function atHue(V: number, H: number, C: number): XY | null {
    const row = planes.get(V)!.get(H);
    if (!row) return null;
    const points = [white, ...row.xy];
    const i = Math.min(Math.floor(C / 2), points.length - 2);
    const f = C / 2 - i;
    if (f > 3) return null;
    return between(points[i]!, points[i + 1]!, f);
  }

  function onPlane(V: number, H: number, C: number): XY | null {
    const h0 = Math.floor(H / 2.5) * 2.5;
    const low = atHue(V, h0 <= 0 ? 100 : h0, C);
    const high = atHue(V, h0 + 2.5 > 100 ? h0 - 97.5 : h0 + 2.5, C);
    return low && high && between(low, high, (H - h0) / 2.5);
  }

  /** Chromaticity under illuminant C; null where the table has no colour. */
  function chromaticityOf({ H, V, C }: Notation): XY | null {
    const below = values.findLast((v) => v <= V) ?? values[0]!;
    const above = values.find((v) => v >= V) ?? values.at(-1)!;
    const low = onPlane(below, H, C);
    const high = onPlane(above, H, C);
    if (!low || !high) return null;
    const [Y0, Y1] = [yOfValue(below), yOfValue(above)];
    return between(low, high, below === above ? 0 : (yOfValue(V) - Y0) / (Y1 - Y0));
  }

  /** CIELAB under D65 by Bradford from illuminant C; null where the table has no colour. */
  function labOfNotation(notation: Notation): Lab | null {
    const xy = chromaticityOf(notation);
    if (!xy) return null;
    const [x, y] = xy;
    const Y = yOfValue(notation.V);
    return labOfXYZ(...multiplyColumn(toD65, (x * Y) / y, Y, ((1 - x - y) * Y) / y), RGB_WHITE);
  }

  /**
   * Notation of a chromaticity and luminance factor (0…100) under illuminant C: damped Newton on the
   * plane of hue and chroma, from the nearest tabulated colour. Chroma under 0.05 is neutral.
   */
  function notationOf([x, y]: XY, Y: number): Notation {
    const V = valueOfY(Y);
    const at = (u: number, v: number): XY | null => {
      const turn = (Math.atan2(v, u) * 50) / Math.PI;
      return chromaticityOf({ H: turn <= 0 ? turn + 100 : turn, V, C: Math.hypot(u, v) });
    };
    const miss = (xy: XY | null) => (xy ? Math.hypot(xy[0] - x, xy[1] - y) : Infinity);
    let [u, v, best] = [0, 0, miss(white)];
    for (let H = 2.5; H <= 100; H += 2.5)
      for (let C = 1; C <= 40; C++) {
        const [p, q] = [C * Math.cos((H * Math.PI) / 50), C * Math.sin((H * Math.PI) / 50)];
        const off = miss(at(p, q));
        if (off < best) [u, v, best] = [p, q, off];
      }
    for (let step = 0; step < 60 && best > 1e-10; step++) {
      const d = 1e-4;
      const [here, right, up] = [at(u, v)!, at(u + d, v)!, at(u, v + d)!];
      if (!right || !up) break;
      const [a, b] = [(right[0] - here[0]) / d, (up[0] - here[0]) / d];
      const [c, e] = [(right[1] - here[1]) / d, (up[1] - here[1]) / d];
      const det = a * e - b * c;
      const [du, dv] = [
        (e * (x - here[0]) - b * (y - here[1])) / det,
        (a * (y - here[1]) - c * (x - here[0])) / det,
      ];
      let damped = 1;
      while (damped > 1e-6 && miss(at(u + damped * du, v + damped * dv)) >= best) damped /= 2;
      if (damped <= 1e-6) break;
      u += damped * du;
      v += damped * dv;
      best = miss(at(u, v));
    }
    const C = Math.hypot(u, v);
    const turn = (Math.atan2(v, u) * 50) / Math.PI;
    return C < 0.05 ? { H: 5, V, C: 0 } : { H: turn <= 0 ? turn + 100 : turn, V, C };
  }

  /** Notation of a CIELAB (D65) colour. */
  function notationOfLab(lab: Lab): Notation {
    const [X, Y, Z] = multiplyColumn(toC, ...xyzOfLab(lab, RGB_WHITE));
    return notationOf([X / (X + Y + Z), Y / (X + Y + Z)], Y);
  }

  /** Level-2 and level-3 names of the one block that holds a notation. */
  function nameOfNotation({ H, V, C }: Notation): NamedCentroid {
    const h = ((((H - 1) % 100) + 100) % 100) + 1;
    const v = Math.min(V, 9.999999);
    const blocks: readonly (readonly number[])[] = names.blocks;
    const block = blocks.find(
      ([h0, h1, v0, v1, c0, c1]) =>
        h >= h0! && h < h1! && v >= v0! && v < v1! && C >= c0! && C < (c1 ?? Infinity),
    );
    return centroids[block![6]! - 1]!;
  }

  const centroids: NamedCentroid[] = names.names.map(
    ([number, level3, level2, notation]: [number, string, string, string]) => ({
      number,
      level3,
      level2,
      ...parseNotation(notation),
    }),
  );

  /** The observed (not extrapolated) colours of whole values 1…9, with chroma 1 and 0.3 added. */
  function realColours(): Notation[] {
    const colours: Notation[] = [];
    for (const [V, rows] of planes)
      for (const [H, { real_max_chroma }] of rows)
        if (V >= 1)
          for (const C of [0.3, 1, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20])
            if (C <= (real_max_chroma ?? -1)) colours.push({ H, V, C });
    return colours;
  }

  return { labOfNotation, notationOf, notationOfLab, nameOfNotation, toC, centroids, realColours };
}

const between = (p: XY, q: XY, f: number): XY => [
  p[0] + (q[0] - p[0]) * f,
  p[1] + (q[1] - p[1]) * f,
];
