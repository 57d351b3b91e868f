import sharp from 'sharp';
import {
  MARK_MM,
  markCentres,
  PAPER_MM,
  type SwatchCard,
} from '../../src/calibration/swatch-card.ts';
import { BANDS, type Reflectance, spectrum } from '../../src/colour/grid.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { type Camera, IDEAL, LAMP } from './card-camera.ts';
import { encode } from './encode.ts';
import { hash, normal, smooth } from './specimen-noise.ts';

/** How a card is photographed. */
export interface Shot {
  readonly camera?: Camera;
  /** Degrees by which the page leans away, and in which direction. */
  readonly tilt?: number;
  readonly tiltTowards?: number;
  /** Degrees by which the camera is turned: 180 is upside down. */
  readonly turn?: number;
  /** Pixels along the photograph's long side. */
  readonly size?: number;
  /** Share of the picture's height that the page takes. */
  readonly fill?: number;
  /** Page moved off the middle, in page heights. */
  readonly offset?: readonly [number, number];
  /** Light falls by this share from one side of the page to the other. */
  readonly uneven?: number;
  readonly unevenTowards?: number;
  /** Standard deviation of the blur in pixels. */
  readonly blur?: number;
  /** Grain of linear light at 18 %. */
  readonly noise?: number;
  /** JPEG quality; without it no file is made. */
  readonly jpeg?: number;
  readonly exposure?: number;
  /** Strength of the camera's own contrast curve, 0 none. */
  readonly curve?: number;
  /** Gain of red, green, blue: a cast. */
  readonly cast?: readonly [number, number, number];
  /** Share of lamp-light at one side of the page, none at the other. */
  readonly lamp?: number;
  /** A shadow's hard edge: the page is darker by this share below a slanting line. */
  readonly shadow?: number;
  /** Places with a gloss, by number. */
  readonly gloss?: readonly number[];
  readonly dust?: boolean;
  readonly table?: Reflectance;
  readonly seed?: number;
}

export interface Chart {
  readonly R: readonly Reflectance[];
  /** Its top left patch's centre on the page's plane and the distance between patches, millimetres. */
  readonly x: number;
  readonly y: number;
  readonly step: number;
}

export const flat = (v: number): Reflectance => spectrum<'R'>(new Float64Array(BANDS).fill(v));
/** As readers assume when nothing is stated: L* 95 and 49.5. */
export const WHITE_CARD = flat(0.8766);
export const GREY_CARD = flat(0.1799);
const BLACK_CARD = flat(0.03);
const PAPER = spectrum<'R'>(Float64Array.from({ length: BANDS }, (_, i) => 0.83 - 0.0006 * i));
const INK = flat(0.035);
const TABLE = spectrum<'R'>(Float64Array.from({ length: BANDS }, (_, i) => 0.1 + 0.007 * i));

const CELL = 0.2;
/** Table about the page, in millimetres: what a chart may lie on. */
const MARGIN = 60;
/** Which material covers each cell, row by row. */
interface Page {
  readonly columns: number;
  readonly rows: number;
  readonly materials: Uint8Array;
}
const DRAWN = new Map<string, Page>();

export interface Photo {
  readonly pixels: Pixels;
  /** Page millimetres to photograph pixels, as the picture was made. */
  at(x: number, y: number): [number, number];
}

/**
 * Photographs a card as it would be printed, painted and laid on a table.
 * @param paint reflectance, as measured, of a painted place; undefined leaves it bare
 */
export async function photograph(
  card: SwatchCard,
  paint: (place: SwatchCard['places'][number]) => Reflectance | undefined,
  shot: Shot = {},
  chart?: Chart,
): Promise<Photo> {
  const {
    camera = IDEAL,
    tilt = 0,
    tiltTowards = 30,
    turn = 0,
    size = 1300,
    fill = 0.86,
    offset = [0, 0],
    uneven = 0,
    unevenTowards = 200,
    exposure = 0.82,
    cast = [1, 1, 1],
    lamp = 0,
    shadow = 0,
    seed = 1,
  } = shot;
  const [pageWidth, pageHeight] = PAPER_MM[card.paper];
  const upright = Math.abs(Math.cos((turn * Math.PI) / 180)) > 0.7;
  const [width, height] = upright
    ? [Math.round(size * 0.78), size]
    : [size, Math.round(size * 0.78)];

  // The camera looks down on the page's middle from two page heights away.
  const distance = 2 * pageHeight;
  const focal = (fill * Math.max(width, height) * distance) / pageHeight;
  const a = (tilt * Math.PI) / 180;
  const towards = (tiltTowards * Math.PI) / 180;
  const roll = (turn * Math.PI) / 180;
  const [cosA, sinA] = [Math.cos(a), Math.sin(a)];
  const [cosTo, sinTo] = [Math.cos(towards), Math.sin(towards)];
  const [cosRoll, sinRoll] = [Math.cos(roll), Math.sin(roll)];
  const at = (x: number, y: number): [number, number] => {
    const [p, q] = [x - pageWidth / 2, y - pageHeight / 2];
    // Leaning about the axis square to `towards`.
    const along = p * cosTo + q * sinTo;
    const across = -p * sinTo + q * cosTo;
    const depth = distance + along * sinA;
    const flatAlong = along * cosA;
    const u = flatAlong * cosTo - across * sinTo;
    const v = flatAlong * sinTo + across * cosTo;
    const [s, t] = [(focal * u) / depth, (focal * v) / depth];
    return [
      width / 2 + s * cosRoll - t * sinRoll + offset[0] * fill * height,
      height / 2 + s * sinRoll + t * cosRoll + offset[1] * fill * height,
    ];
  };
  const back = (px: number, py: number): [number, number] => {
    const i = px - width / 2 - offset[0] * fill * height;
    const j = py - height / 2 - offset[1] * fill * height;
    const s = (i * cosRoll + j * sinRoll) / focal;
    const t = (-i * sinRoll + j * cosRoll) / focal;
    const sAlong = s * cosTo + t * sinTo;
    const sAcross = -s * sinTo + t * cosTo;
    const along = (sAlong * distance) / (cosA - sAlong * sinA);
    const depth = distance + along * sinA;
    const across = sAcross * depth;
    return [
      along * cosTo - across * sinTo + pageWidth / 2,
      along * sinTo + across * cosTo + pageHeight / 2,
    ];
  };

  // Materials: each with its light by day and by lamp.
  const table = shot.table ?? TABLE;
  const materials: Reflectance[] = [PAPER, INK, table, flat(0.7), flat(0.25)];
  const placeAt: { place: SwatchCard['places'][number]; material: number }[] = [];
  for (const place of card.places) {
    const R =
      place.kind === 'white'
        ? WHITE_CARD
        : place.kind === 'grey'
          ? GREY_CARD
          : place.kind === 'black'
            ? BLACK_CARD
            : paint(place);
    if (R === undefined) continue;
    placeAt.push({ place, material: materials.length });
    materials.push(R);
  }
  const chartFrom = materials.length;
  if (chart) materials.push(...chart.R);
  const day = materials.map((R) => camera(R));
  const lit = lamp > 0 ? materials.map((R) => camera(R, LAMP)) : day;
  // The page is drawn once, in fifths of a millimetre, and looked up for each pixel.
  const key = `${JSON.stringify(card.places)}${placeAt.length}${placeAt.map(({ place }) => place.number)}${JSON.stringify(chart && [chart.x, chart.y, chart.step])}`;
  const page = DRAWN.get(key) ?? drawn(card, placeAt, chart && { ...chart, from: chartFrom });
  DRAWN.set(key, page);
  const { columns, rows, materials: materialOf } = page;
  const materialAt = (x: number, y: number): number => {
    const column = Math.floor((x + MARGIN) / CELL);
    const row = Math.floor((y + MARGIN) / CELL);
    if (column < 0 || row < 0 || column >= columns || row >= rows) return 2;
    return materialOf[row * columns + column]!;
  };

  const rgb = new Float32Array(width * height * 3);
  const lean = (unevenTowards * Math.PI) / 180;
  const [cosLean, sinLean] = [Math.cos(lean), Math.sin(lean)];
  for (let py = 0; py < height; py++)
    for (let px = 0; px < width; px++) {
      const i = (py * width + px) * 3;
      const [x, y] = back(px + 0.5, py + 0.5);
      const material = materialAt(x, y);
      const along =
        ((x / pageWidth - 0.5) * cosLean + (y / pageHeight - 0.5) * sinLean) /
        (Math.abs(cosLean) + Math.abs(sinLean));
      // 1 on the lit side, less by `uneven` on the other, with a little bend.
      let light = (1 - uneven * (0.5 - along)) * (1 - 0.1 * uneven * along * along);
      if (shadow > 0 && x + 0.4 * y > 0.62 * pageHeight) light *= 1 - shadow;
      const share = lamp * Math.min(1, Math.max(0, 0.5 - along));
      for (let c = 0; c < 3; c++) {
        const seen = (1 - share) * day[material]![c]! + share * lit[material]![c]!;
        rgb[i + c] = exposure * cast[c]! * light * Math.max(0, seen);
      }
      if (material > 4 && material < chartFrom) {
        const { place } = placeAt[material - 5]!;
        if (shot.gloss?.includes(place.number)) {
          // A soft reflection in a corner of the place, with specks about it.
          const far = Math.hypot(x - place.x - 3, y - place.y + 2) / 1.9;
          const veil = Math.exp(-far * far * 1.5) + (far < 2 && hash(px, py, 11) < 0.05 ? 0.6 : 0);
          for (let c = 0; c < 3; c++) rgb[i + c]! += 0.9 * veil;
        }
        if (shot.dust && hash(Math.floor(x * 2), Math.floor(y * 2), 23) < 0.01)
          for (let c = 0; c < 3; c++) rgb[i + c] = 0.25 * exposure;
      }
    }
  const data = await developed(rgb, width, height, shot, seed);
  return { pixels: { width, height, data, space: 'srgb' }, at };
}

/** Draws the table, the page on it, and what is printed and painted there: each over what was drawn before. */
function drawn(
  { paper, places }: SwatchCard,
  painted: readonly { readonly place: SwatchCard['places'][number]; readonly material: number }[],
  chart?: Omit<Chart, 'R'> & { readonly from: number },
): Page {
  const [pageWidth, pageHeight] = PAPER_MM[paper];
  const columns = Math.ceil((pageWidth + 2 * MARGIN) / CELL);
  const rows = Math.ceil((pageHeight + 2 * MARGIN) / CELL);
  const materials = new Uint8Array(columns * rows).fill(2);
  /** In a box of millimetres: undefined leaves a cell as it is. */
  const draw = (
    [left, top, right, bottom]: readonly [number, number, number, number],
    material: (x: number, y: number) => number | undefined,
  ) => {
    const cell = (v: number) => Math.floor((v + MARGIN) / CELL);
    const [x0, x1] = [Math.max(0, cell(left)), Math.min(columns - 1, cell(right))];
    const [y0, y1] = [Math.max(0, cell(top)), Math.min(rows - 1, cell(bottom))];
    for (let row = y0; row <= y1; row++)
      for (let column = x0; column <= x1; column++) {
        const found = material((column + 0.5) * CELL - MARGIN, (row + 0.5) * CELL - MARGIN);
        if (found !== undefined) materials[row * columns + column] = found;
      }
  };
  const onPage = (x: number, y: number) => x >= 0 && y >= 0 && x <= pageWidth && y <= pageHeight;

  draw([0, 0, pageWidth, pageHeight], (x, y) => (onPage(x, y) ? 0 : undefined));
  draw([27, 9, pageWidth - 27, 30], (x, y) => {
    if (x <= 27 || x >= pageWidth - 27 || y <= 9 || y >= 30) return undefined;
    if (Math.floor(y / 1.8) % 2 !== 0) return undefined;
    return hash(Math.floor(x * 1.6), Math.floor(y / 3.6), 5) < 0.35 ? 1 : 0;
  });
  // Where two meet the first lies on top.
  for (const place of places.toReversed()) {
    const [across, down] = [place.width / 2, place.height / 2];
    draw(
      [place.x - across - 1, place.y - down - 1, place.x + across + 1, place.y + down + 8],
      (x, y) => {
        const [u, v] = [x - place.x, y - place.y];
        const line = v - down - 2.2;
        const words = line > -1.6 && line < 5.4 && u > -across && u < across;
        if (
          words &&
          Math.floor(line / 1.2) % 2 === 0 &&
          hash(Math.floor(x * 2), Math.floor(line), 3) < 0.4
        )
          return 1;
        return Math.abs(Math.abs(u) - across) < 0.1 && Math.abs(v) < down ? 4 : undefined;
      },
    );
  }
  for (const { place, material } of painted.toReversed()) {
    const [across, down] = [place.width / 2, place.height / 2];
    draw(
      [place.x - across - 1, place.y - down - 1, place.x + across + 1, place.y + down + 1],
      (x, y) => {
        const [u, v] = [Math.abs(x - place.x), Math.abs(y - place.y)];
        if (u > across + 0.5 || v > down + 0.5) return undefined;
        // Painted by hand: a little over the frame here, short of it there.
        const ragged = 0.5 * smooth(x / 3, y / 3, place.number);
        return u < across + ragged && v < down + ragged ? material : undefined;
      },
    );
  }
  for (const [i, [cx, cy]] of markCentres(paper).entries()) {
    const { outer, eye, pupil } = MARK_MM;
    draw([cx - outer, cy - outer, cx + outer, cy + outer], (x, y) => {
      const r = Math.hypot(x - cx, y - cy);
      if (r > outer) return undefined;
      return r > eye || (i === 0 && r < pupil) ? 1 : 0;
    });
  }
  if (chart) {
    const { x: left, y: top, step, from } = chart;
    draw([left - step, top - step, left + 6 * step, top + 4 * step], (x, y) => {
      const [column, row] = [(x - left) / step, (y - top) / step];
      if (!(column > -0.7 && column < 5.7 && row > -0.7 && row < 3.7)) return undefined;
      const [c, r] = [Math.round(column), Math.round(row)];
      const inside = Math.abs(column - c) < 0.43 && Math.abs(row - r) < 0.43;
      return inside && c >= 0 && c < 6 && r >= 0 && r < 4 ? from + r * 6 + c : 1;
    });
  }
  return { columns, rows, materials };
}

async function developed(
  rgb: Float32Array,
  width: number,
  height: number,
  { blur = 0.8, noise = 0.004, curve = 0, jpeg }: Shot,
  seed: number,
): Promise<Uint8Array> {
  const soft = blurred(rgb, width, height, blur);
  const next = normal(seed * 31 + 7);
  const encoded = new Uint8Array(width * height * 3);
  for (let i = 0; i < soft.length; i++) {
    const v = soft[i]!;
    const grain = noise * Math.sqrt(Math.max(0, v) / 0.18 + 0.02) * next();
    const e = encode(Math.max(0, v + grain));
    const bent = e + curve * e * (1 - e) * (e - 0.45);
    encoded[i] = Math.max(0, Math.min(255, Math.round(255 * bent)));
  }
  let image = sharp(encoded, { raw: { width, height, channels: 3 } });
  if (jpeg !== undefined) image = sharp(await image.jpeg({ quality: jpeg }).toBuffer());
  const { data } = await image.ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return new Uint8Array(data.buffer, data.byteOffset, data.length);
}

function blurred(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  if (sigma < 0.2) return from;
  const r = Math.ceil(3 * sigma);
  const kernel = Array.from({ length: 2 * r + 1 }, (_, k) =>
    Math.exp(-0.5 * ((k - r) / sigma) ** 2),
  );
  const total = kernel.reduce((sum, v) => sum + v, 0);
  const weights = Float64Array.from(kernel, (v) => v / total);
  const pass = (image: Float32Array, count: number, lines: number, step: number, line: number) => {
    const out = new Float32Array(image.length);
    for (let row = 0; row < lines; row++)
      for (let i = 0; i < count; i++) {
        const at = row * line + i * step;
        const inside = i >= r && i < count - r;
        let [red, green, blue] = [0, 0, 0];
        for (let k = -r; k <= r; k++) {
          // Beyond its edge the picture goes on as it ends.
          const j = inside ? at + k * step : row * line + clamp(i + k, count) * step;
          const weight = weights[k + r]!;
          red += weight * image[j]!;
          green += weight * image[j + 1]!;
          blue += weight * image[j + 2]!;
        }
        out[at] = red;
        out[at + 1] = green;
        out[at + 2] = blue;
      }
    return out;
  };
  return pass(pass(from, width, height, 3, width * 3), height, width, width * 3, 3);
}

const clamp = (i: number, count: number) => Math.max(0, Math.min(count - 1, i));
