import { signal } from '@preact/signals';
import type { NeutralSpot, SpecimenBody } from '../../../book/specimen.ts';
import { linearAdaptation } from '../../../colour/adaptation.ts';
import { applied, diagonal, inverse, type Matrix, product } from '../../../colour/matrix.ts';
import { RGB_WHITE, xyzOfLinear } from '../../../colour/rgb.ts';
import type { LabelMap } from '../../../harmony/harmony.ts';
import { NOWHERE } from '../../../harmony/labels.ts';
import { fullMask, type Mask } from '../../../photo/mask.ts';
import { lightStated, type Setting, type StatedLight } from '../../../photo/neutral.ts';

/** How the light was set right. */
export type Light =
  | { readonly kind: 'spot'; readonly spot: NeutralSpot; readonly matrix: Matrix }
  | { readonly kind: 'stated'; readonly light: StatedLight; readonly matrix: Matrix };

/** How the photograph is looked at: its light, what is kept of it, and what was said of it. */
export interface Look {
  readonly light: Light | null;
  /** Null where nothing is rubbed out. */
  readonly mask: Mask | null;
  /** 1 where the file itself was see-through: the stored picture no longer shows it. */
  readonly clear: Mask | null;
  /** Of the photograph as it was gathered, in pixels; 0 until it is. */
  readonly width: number;
  readonly height: number;
  readonly remarks: readonly string[];
  /** As many colours as the painter asked for; null: as many as the photograph asks for. */
  readonly wanted: number | null;
  /** The harmony has not followed yet. */
  readonly behind: boolean;
  /** Colours were dropped by hand since it was gathered. */
  readonly hasDropped: boolean;
}

export const NO_LOOK: Look = {
  light: null,
  mask: null,
  clear: null,
  width: 0,
  height: 0,
  remarks: [],
  wanted: null,
  behind: false,
  hasDropped: false,
};
export const look = signal<Look>(NO_LOOK);

/** See-through places in a stored mask. */
const CLEAR = 255;

/** The look that a specimen's record tells of. */
export function lookOf(
  { neutral, stated, gathered }: SpecimenBody,
  labels: LabelMap | null,
  stored: Mask | null,
): Look {
  if (!gathered) return NO_LOOK;
  const { width, height, remarks } = gathered;
  let light: Light | null = null;
  if (neutral) light = { kind: 'spot', spot: neutral, matrix: matrixOf(neutral) };
  else if (stated) light = statedLight(stated);
  // Before a hand touches it, only what is see-through is not looked at.
  const clear = stored
    ? where(stored, CLEAR)
    : labels?.data.includes(NOWHERE)
      ? grown(fitted(where(labels, NOWHERE), width, height))
      : null;
  const rubbed = stored?.data.includes(0) ?? false;
  const mask =
    stored && rubbed ? { ...stored, data: stored.data.map((v) => (v === 0 ? 0 : 1)) } : null;
  return {
    ...NO_LOOK,
    light,
    mask,
    clear: clear?.data.includes(1) ? clear : null,
    width,
    height,
    remarks,
  };
}

const where = ({ width, height, data }: Mask, value: number): Mask => ({
  width,
  height,
  data: data.map((v) => (v === value ? 1 : 0)),
});

/** A mask at the size of those that are drawn by hand. */
function fitted(mask: Mask, width: number, height: number): Mask {
  const to = fullMask(width, height);
  const data = to.data.map((_, i) => {
    const x = Math.floor((((i % to.width) + 0.5) / to.width) * mask.width);
    const y = Math.floor(((Math.floor(i / to.width) + 0.5) / to.height) * mask.height);
    return mask.data[y * mask.width + x]!;
  });
  return { ...to, data };
}

/** One cell wider: along a see-through rim the stored picture mixes thing and black. */
function grown(mask: Mask): Mask {
  const { width, height, data } = mask;
  if (!data.includes(1)) return mask;
  const at = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && data[y * width + x] === 1;
  return {
    width,
    height,
    data: data.map((v, i) => {
      const [x, y] = [i % width, Math.floor(i / width)];
      return v === 1 || at(x - 1, y) || at(x + 1, y) || at(x, y - 1) || at(x, y + 1) ? 1 : 0;
    }),
  };
}

/** What gathering looks at: kept, and not see-through; undefined where that is everything. */
export function lookedAt({ mask, clear }: Pick<Look, 'mask' | 'clear'>): Mask | undefined {
  if (!clear) return mask ?? undefined;
  const { width, height } = clear;
  return { width, height, data: clear.data.map((v, i) => (v === 1 ? 0 : (mask?.data[i] ?? 1))) };
}

/** The mask as the book keeps it. */
export function storedMask({ mask, clear, width, height }: Look): Mask {
  const kept = mask ?? fullMask(width, height);
  return clear
    ? { ...kept, data: kept.data.map((v, i) => (clear.data[i] === 1 ? CLEAR : v)) }
    : kept;
}

export const statedLight = (light: StatedLight): Light => ({
  kind: 'stated',
  light,
  matrix: lightStated(light).matrix,
});

/** The record of a spot that set the light, and what it did. */
export function spotLight(
  { matrix, by }: Setting,
  at: { x: number; y: number; patch: number; grey?: number },
  size: { width: number; height: number },
): Light | null {
  if (by.kind !== 'spot') return null;
  const { linear, side } = by.spot;
  const before = linear.map((v) => Math.max(v, 1e-4)) as [number, number, number];
  const after = applied(matrix, ...before);
  const gain = (i: 0 | 1 | 2) => Math.max(1e-6, after[i] / before[i]);
  const { x, y, grey } = at;
  const radius = Math.min(1, side / 2 / Math.max(size.width, size.height));
  const spot: NeutralSpot = {
    x,
    y,
    radius,
    gains: [gain(0), gain(1), gain(2)],
    ...(grey !== undefined ? { grey } : {}),
  };
  return { kind: 'spot', spot, matrix: matrixOf(spot) };
}

/** The matrix again from the record: a neutral spot became grey, so its colour was 1 ÷ gains of that grey. */
export function matrixOf({ gains, grey }: NeutralSpot): Matrix {
  const [r, g, b] = gains.map((gain) => (grey ?? 1) / gain) as [number, number, number];
  const xyz = xyzOfLinear(r, g, b);
  const adapted = linearAdaptation(xyz, RGB_WHITE);
  if (grey === undefined) return adapted;
  const exposure = (100 * grey) / xyz[1];
  return product(diagonal(exposure, exposure, exposure), adapted);
}

/** From linear sRGB as it was seen in one light to how it is seen in another. */
export function turnOf(from: Light | null, to: Light | null): Matrix {
  const back = from ? inverse(from.matrix) : null;
  if (!back) return to?.matrix ?? diagonal(1, 1, 1);
  return to ? product(to.matrix, back) : back;
}
