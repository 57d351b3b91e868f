import sharp from 'sharp';
import type { Lab } from '../../src/colour/lab.ts';
import { DECODE_8BIT, labOfLinear, linearOfLab } from '../../src/colour/rgb.ts';
import { encode } from './encode.ts';
import { type Canvas, paint, type Scene } from './specimen-canvas.ts';
import { normal } from './specimen-noise.ts';

/** Three passes of a box along rows then columns come close to a Gaussian. */
function blurred(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  let image = from;
  const r = Math.max(1, Math.round(sigma * 1.0));
  for (let pass = 0; pass < 3; pass++) {
    image = box(image, width, height, r, 3, width * 3);
    image = box(image, height, width, r, width * 3, 3);
  }
  return image;
}

function box(
  from: Float32Array,
  length: number,
  lines: number,
  r: number,
  step: number,
  line: number,
): Float32Array {
  const out = new Float32Array(from.length);
  for (let row = 0; row < lines; row++)
    for (let c = 0; c < 3; c++) {
      const start = row * line + c;
      let sum = 0;
      for (let k = -r; k <= r; k++)
        sum += from[start + Math.max(0, Math.min(length - 1, k)) * step]!;
      for (let i = 0; i < length; i++) {
        out[start + i * step] = sum / (2 * r + 1);
        sum +=
          from[start + Math.min(length - 1, i + r + 1) * step]! -
          from[start + Math.max(0, i - r) * step]!;
      }
    }
  return out;
}

/** A small Gaussian, honest below one pixel. */
function gaussian(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  if (sigma < 0.2) return from;
  if (sigma > 4) return blurred(from, width, height, sigma);
  const r = Math.ceil(sigma * 3);
  const kernel = Array.from({ length: 2 * r + 1 }, (_, k) =>
    Math.exp(-((k - r) ** 2) / (2 * sigma * sigma)),
  );
  const total = kernel.reduce((a, b) => a + b, 0);
  const pass = (image: Float32Array, length: number, lines: number, step: number, line: number) => {
    const out = new Float32Array(image.length);
    for (let row = 0; row < lines; row++)
      for (let i = 0; i < length; i++)
        for (let c = 0; c < 3; c++) {
          let sum = 0;
          for (let k = -r; k <= r; k++)
            sum +=
              kernel[k + r]! *
              image[row * line + Math.max(0, Math.min(length - 1, i + k)) * step + c]!;
          out[row * line + i * step + c] = sum / total;
        }
    return out;
  };
  return pass(pass(from, width, height, 3, width * 3), height, width, width * 3, 3);
}

/** What the lens and the sensor make of the light: 8-bit sRGB, three values a pixel. */
export function expose(canvas: Canvas, scene: Scene): Uint8Array {
  const { width, height, thing } = canvas;
  const { exposure = 1, bloom = 0.04, blur = 1, noise = 0.012, haze } = scene.camera ?? {};
  let rgb = canvas.rgb;
  if (haze) {
    const veil = linearOfLab(haze.lab);
    for (let i = 0; i < width * height; i++) {
      const h = haze.amount * (scene.things[thing[i]!]!.haze ?? 1);
      for (let c = 0; c < 3; c++) rgb[i * 3 + c] = rgb[i * 3 + c]! * (1 - h) + veil[c]! * h;
    }
  }
  rgb = gaussian(rgb, width, height, (blur * height) / 1000);
  if (bloom > 0) {
    const wide = blurred(rgb, width, height, height / 30);
    for (let i = 0; i < rgb.length; i++) rgb[i] = rgb[i]! * (1 - bloom) + wide[i]! * bloom;
  }
  const next = normal(scene.seed * 7 + 1);
  const out = new Uint8Array(width * height * 3);
  for (let i = 0; i < rgb.length; i++) {
    const v = rgb[i]! * exposure;
    // Photon noise grows with the root of the light; a little is there in the dark.
    const grain = noise * Math.sqrt(Math.max(0, v) / 0.18 + 0.02) * next() * 0.4;
    out[i] = Math.max(0, Math.min(255, Math.round(255 * encode(Math.max(0, v + grain)))));
  }
  return out;
}

/** A region's truth: the median of L*, of a*, of b* over its pixels in the finished file. */
export interface Region {
  readonly name: string;
  readonly lab: Lab;
  readonly share: number;
}

export interface Specimen {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** RGBA as decoded from the finished file. */
  readonly data: Uint8Array;
  readonly file: Buffer;
  readonly regions: readonly Region[];
  readonly thing: Uint8Array;
}

/** Renders a scene to a finished JPEG and measures its truth there. */
export async function render(scene: Scene, height: number): Promise<Specimen> {
  const canvas = paint(scene, height);
  const raw = expose(canvas, scene);
  const { width } = canvas;
  const file = await sharp(raw, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: scene.camera?.jpeg ?? 88 })
    .toBuffer();
  const { data } = await sharp(file).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const pixels = new Uint8Array(data.buffer, data.byteOffset, data.length);
  return {
    name: scene.name,
    width,
    height,
    data: pixels,
    file,
    regions: truth(
      pixels,
      canvas.thing,
      scene.things.map((t) => t.name),
    ),
    thing: canvas.thing,
  };
}

export function truth(data: Uint8Array, thing: Uint8Array, names: readonly string[]): Region[] {
  const cells = thing.length;
  return names.flatMap((name, index) => {
    const planes: [number[], number[], number[]] = [[], [], []];
    for (let i = 0; i < cells; i++) {
      if (thing[i] !== index) continue;
      const lab = labOfLinear(
        DECODE_8BIT[data[i * 4]!]!,
        DECODE_8BIT[data[i * 4 + 1]!]!,
        DECODE_8BIT[data[i * 4 + 2]!]!,
      );
      planes[0].push(lab[0]);
      planes[1].push(lab[1]);
      planes[2].push(lab[2]);
    }
    const n = planes[0].length;
    if (n === 0) return [];
    const middle = (values: number[]) => Float64Array.from(values).sort()[n >> 1]!;
    return [
      {
        name,
        lab: [middle(planes[0]), middle(planes[1]), middle(planes[2])] as Lab,
        share: n / cells,
      },
    ];
  });
}
