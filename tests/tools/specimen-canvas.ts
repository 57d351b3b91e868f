import type { Lab } from '../../src/colour/lab.ts';
import { linearOfLab } from '../../src/colour/rgb.ts';
import { clouds, hash } from './specimen-noise.ts';

/** How light falls in folds over a thing: multipliers of its colour. */
export interface Folds {
  /** Light in the deepest fold and on the highest, 1 = the colour as painted. */
  readonly deep: number;
  readonly high: number;
  /** Folds per picture height. */
  readonly often: number;
  readonly turnDeg?: number;
  /** How far folds wander from straight, 0…1. */
  readonly bend?: number;
}

/** One thing of a scene. */
export interface Thing {
  readonly name: string;
  readonly lab: Lab;
  readonly folds?: Folds;
  /** Spread of hue and chroma inside the thing, in CIELAB units. */
  readonly wander?: number;
  /** Texture: share by which light varies, and grains per picture height. */
  readonly texture?: readonly [amount: number, often: number];
  /** How much of the scene's haze lies before it, 0…1. */
  readonly haze?: number;
}

/** A shape: where it is, and the light on it if it has its own. */
export interface Shape {
  readonly thing: number;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
  readonly inside: (x: number, y: number) => boolean;
  /** Light on it, over the thing's own folds. */
  readonly light?: (x: number, y: number) => number;
  /** Gloss added as white light. */
  readonly gloss?: (x: number, y: number) => number;
}

/** A scene in coordinates where the picture is 1 high and `aspect` wide. */
export interface Scene {
  readonly name: string;
  readonly seed: number;
  readonly aspect: number;
  readonly things: readonly Thing[];
  /** The first covers everything; later shapes lie over earlier ones. */
  readonly shapes: readonly Shape[];
  readonly camera?: Camera;
  /** Light over the whole picture. */
  readonly light?: (x: number, y: number) => number;
  /** Light of the sky that fills the shadows, linear red, green, blue as shares of the sun. */
  readonly sky?: readonly [number, number, number];
}

export interface Camera {
  readonly exposure?: number;
  /** Share of light spread widely by the lens. */
  readonly bloom?: number;
  /** Blur in thousandths of the picture height. */
  readonly blur?: number;
  /** Noise at middle grey, as a share of full scale. */
  readonly noise?: number;
  readonly haze?: { readonly lab: Lab; readonly amount: number };
  readonly jpeg?: number;
}

/** Linear light, three planes, and which thing each pixel belongs to. */
export interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly rgb: Float32Array;
  readonly thing: Uint8Array;
}

/** Paints a scene in linear light, before the camera. */
export function paint(scene: Scene, height: number): Canvas {
  const width = Math.round(height * scene.aspect);
  const cells = width * height;
  const thing = new Uint8Array(cells);
  const light = new Float32Array(cells).fill(1);
  const gloss = new Float32Array(cells);
  for (const shape of scene.shapes) {
    const [left, top, right, bottom] = shape.box;
    const x1 = Math.min(width, Math.ceil(right * height));
    const y1 = Math.min(height, Math.ceil(bottom * height));
    for (let py = Math.max(0, Math.floor(top * height)); py < y1; py++)
      for (let px = Math.max(0, Math.floor(left * height)); px < x1; px++) {
        const x = (px + 0.5) / height;
        const y = (py + 0.5) / height;
        if (!shape.inside(x, y)) continue;
        const at = py * width + px;
        thing[at] = shape.thing;
        light[at] = shape.light ? shape.light(x, y) : 1;
        gloss[at] = shape.gloss ? shape.gloss(x, y) : 0;
      }
  }
  const rgb = new Float32Array(cells * 3);
  for (let py = 0; py < height; py++)
    for (let px = 0; px < width; px++) {
      const at = py * width + px;
      const x = (px + 0.5) / height;
      const y = (py + 0.5) / height;
      const t = scene.things[thing[at]!]!;
      const seed = scene.seed * 101 + thing[at]! * 1009;
      const wander = t.wander ?? 0;
      const [L, a, b] = t.lab;
      const turnA = wander * clouds(x * 4, y * 4, seed + 1, 3);
      const turnB = wander * clouds(x * 4, y * 4, seed + 2, 3);
      const colour = linearOfLab([L, a + turnA, b + turnB]);
      let shade = light[at]! * (scene.light ? scene.light(x, y) : 1);
      if (t.folds) shade *= foldLight(t.folds, x, y, seed + 3);
      if (t.texture) {
        const [amount, often] = t.texture;
        shade *= Math.max(0.05, 1 + amount * 1.6 * clouds(x * often, y * often, seed + 4, 3));
      }
      for (let c = 0; c < 3; c++) rgb[at * 3 + c] = Math.max(0, colour[c]!) * shade + gloss[at]!;
    }
  return { width, height, rgb, thing };
}

/** Rounded ridges and narrow valleys that wander, between `deep` and `high`. */
export function foldLight(folds: Folds, x: number, y: number, seed: number): number {
  const turn = ((folds.turnDeg ?? 70) * Math.PI) / 180;
  const across = x * Math.sin(turn) + y * Math.cos(turn);
  const along = x * Math.cos(turn) - y * Math.sin(turn);
  const bend = folds.bend ?? 0.5;
  const drift =
    bend * (clouds(along * 1.5, across * 2, seed, 3) + 0.25 * clouds(x * 5, y * 5, seed + 9, 2));
  const phase = folds.often * across + drift * 1.2 + hash(seed, 3, 5);
  const ridge = 0.5 + 0.5 * Math.sin(2 * Math.PI * phase);
  const height = 0.75 * ridge ** 0.8 + 0.25 * (0.5 + 0.5 * clouds(x * 1.3, y * 1.3, seed + 5, 2));
  return folds.deep + (folds.high - folds.deep) * Math.max(0, Math.min(1, height));
}

/** The whole picture. */
export const ground = (thing: number): Shape => ({
  thing,
  box: [0, 0, 99, 99],
  inside: () => true,
});

/** Everything below a wandering line. */
export function below(
  thing: number,
  y0: number,
  rough: number,
  often: number,
  seed: number,
  slope = 0,
): Shape {
  return {
    thing,
    box: [0, 0, 99, 99],
    inside: (x, y) => y > y0 + slope * x + rough * clouds(x * often, 0.5, seed, 4),
  };
}

/** A blob with a wandering outline. */
export function blob(
  thing: number,
  x0: number,
  y0: number,
  rx: number,
  ry: number,
  rough: number,
  seed: number,
  turnDeg = 0,
): Shape {
  const c = Math.cos((turnDeg * Math.PI) / 180);
  const s = Math.sin((turnDeg * Math.PI) / 180);
  const r = Math.max(rx, ry) * (1.1 + rough);
  const often = 2.2 / Math.max(rx, ry);
  return {
    thing,
    box: [x0 - r, y0 - r, x0 + r, y0 + r],
    inside: (x, y) => {
      const u = ((x - x0) * c + (y - y0) * s) / rx;
      const v = ((y - y0) * c - (x - x0) * s) / ry;
      return u * u + v * v < (1 + rough * clouds(x * often, y * often, seed, 4)) ** 2;
    },
  };
}

/** A ball lit from above left. */
export function ball(thing: number, x0: number, y0: number, r: number, dark = 0.2): Shape {
  return {
    thing,
    box: [x0 - r, y0 - r, x0 + r, y0 + r],
    inside: (x, y) => (x - x0) ** 2 + (y - y0) ** 2 < r * r,
    light: (x, y) => {
      const u = (x - x0) / r;
      const v = (y - y0) / r;
      const z = Math.sqrt(Math.max(0, 1 - u * u - v * v));
      const lit = Math.max(0, -0.45 * u - 0.55 * v + 0.7 * z);
      return dark + (1.15 - dark) * lit;
    },
    gloss: (x, y) => {
      const d = ((x - x0) / r + 0.35) ** 2 + ((y - y0) / r + 0.4) ** 2;
      return d < 0.05 ? 0.5 * (1 - d / 0.05) ** 2 : 0;
    },
  };
}

/** A stroke of changing width from one point to another. */
export function stroke(
  thing: number,
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  w0: number,
  w1: number,
  bend = 0,
): Shape {
  const length = Math.hypot(x1 - x0, y1 - y0);
  const ux = (x1 - x0) / length;
  const uy = (y1 - y0) / length;
  const w = Math.max(w0, w1) + Math.abs(bend) * length;
  const across = (x: number, y: number): [number, number, number] => {
    const t = ((x - x0) * ux + (y - y0) * uy) / length;
    const off = (y - y0) * ux - (x - x0) * uy - bend * length * 4 * t * (1 - t);
    return [t, off, w0 + (w1 - w0) * t];
  };
  return {
    thing,
    box: [Math.min(x0, x1) - w, Math.min(y0, y1) - w, Math.max(x0, x1) + w, Math.max(y0, y1) + w],
    inside: (x, y) => {
      const [t, off, half] = across(x, y);
      return t >= 0 && t <= 1 && Math.abs(off) < half;
    },
    light: (x, y) => {
      const [, off, half] = across(x, y);
      const v = off / Math.max(1e-6, half);
      return 0.3 + 0.85 * Math.max(0, Math.sqrt(Math.max(0, 1 - v * v)) * 0.8 - 0.35 * v);
    },
  };
}

/** A pointed leaf with a rib. */
export function leaf(
  thing: number,
  [x0, y0]: readonly [number, number],
  lengthOf: number,
  half: number,
  turnDeg: number,
  bright = 1,
): Shape {
  const c = Math.cos((turnDeg * Math.PI) / 180);
  const s = Math.sin((turnDeg * Math.PI) / 180);
  const local = (x: number, y: number): [number, number] => [
    ((x - x0) * c + (y - y0) * s) / lengthOf,
    ((y - y0) * c - (x - x0) * s) / half,
  ];
  return {
    thing,
    box: [x0 - lengthOf, y0 - lengthOf, x0 + lengthOf, y0 + lengthOf],
    inside: (x, y) => {
      const [t, v] = local(x, y);
      if (t < 0 || t > 1) return false;
      const teeth = 1 + 0.07 * Math.sin(t * 60);
      return Math.abs(v) < Math.sin(Math.PI * t ** 0.8) ** 0.9 * teeth;
    },
    light: (x, y) => {
      const [t, v] = local(x, y);
      const rib = Math.abs(v) < 0.06 ? 1.25 : 1;
      const veins = 1 + 0.1 * Math.sin((t - Math.abs(v) * 0.25) * 75);
      const side = v < 0 ? 1.05 : 0.62;
      return bright * rib * veins * side * (0.75 + 0.35 * Math.sin(Math.PI * t));
    },
  };
}
