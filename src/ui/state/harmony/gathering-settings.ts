import { signal } from '@preact/signals';
import type { NeutralSpot, SpecimenBody } from '../../../book/schema/specimen.ts';
import { rgbAdaptationMatrix } from '../../../colour/adaptation.ts';
import { diagonal, inverse, type Matrix, multiplyColumn, product } from '../../../colour/matrix.ts';
import { RGB_WHITE, xyzOfLinear } from '../../../colour/rgb.ts';
import type { LabelMap } from '../../../harmony/harmony.ts';
import { fullMask, type Mask } from '../../../photo/mask.ts';
import {
  type NamedLight,
  type WhiteBalance,
  whiteBalanceForLight,
} from '../../../photo/white-balance.ts';
import { UNLABELLED } from '../../../segmentation/labels.ts';

/** White balance: from a neutral spot or a stated light. The matrix applies to linear sRGB. */
export type AppliedWhiteBalance =
  | { readonly kind: 'spot'; readonly spot: NeutralSpot; readonly matrix: Matrix }
  | { readonly kind: 'stated'; readonly light: NamedLight; readonly matrix: Matrix };

/** Settings of the gathering: white balance, mask, number of colours, and their remarks. */
export interface GatheringSettings {
  readonly light: AppliedWhiteBalance | null;
  /** 1 kept, 0 erased; null if nothing is erased. */
  readonly mask: Mask | null;
  /** 1 where the imported file was transparent, which the stored JPEG cannot show; or null. */
  readonly transparentMask: Mask | null;
  /** Size of the gathered image, px; 0 before the first gathering. */
  readonly width: number;
  readonly height: number;
  readonly remarks: readonly string[];
  /** Number of colours that the painter asked for; null for automatic. */
  readonly colourCount: number | null;
  /** Whether the harmony is older than the mask. */
  readonly isOutdated: boolean;
  /** Whether the painter removed colours since the last gathering. */
  readonly hasDropped: boolean;
}

export const DEFAULT_GATHERING_SETTINGS: GatheringSettings = {
  light: null,
  mask: null,
  transparentMask: null,
  width: 0,
  height: 0,
  remarks: [],
  colourCount: null,
  isOutdated: false,
  hasDropped: false,
};
/** Settings of the open specimen; {@link DEFAULT_GATHERING_SETTINGS} if none is open. */
export const gatheringSettings = signal<GatheringSettings>(DEFAULT_GATHERING_SETTINGS);

/** Value of transparent pixels in a stored mask. */
const TRANSPARENT = 255;

/**
 * Settings from a specimen's record.
 * @param stored mask with 0, 1 and {@link TRANSPARENT}; null if none is stored
 */
export function settingsFromSpecimen(
  { neutral, stated, gathered }: SpecimenBody,
  labels: LabelMap | null,
  stored: Mask | null,
): GatheringSettings {
  if (!gathered) return DEFAULT_GATHERING_SETTINGS;
  const { width, height, remarks } = gathered;
  let light: AppliedWhiteBalance | null = null;
  if (neutral) light = { kind: 'spot', spot: neutral, matrix: whiteBalanceMatrix(neutral) };
  else if (stated) light = whiteBalanceFromStated(stated);
  // Without a stored mask, the label map's gaps are the transparent pixels.
  const clear = stored
    ? maskWhere(stored, TRANSPARENT)
    : labels?.data.includes(UNLABELLED)
      ? dilateMask(resampleMask(maskWhere(labels, UNLABELLED), width, height))
      : null;
  const rubbed = stored?.data.includes(0) ?? false;
  const mask =
    stored && rubbed ? { ...stored, data: stored.data.map((v) => (v === 0 ? 0 : 1)) } : null;
  return {
    ...DEFAULT_GATHERING_SETTINGS,
    light,
    mask,
    transparentMask: clear?.data.includes(1) ? clear : null,
    width,
    height,
    remarks,
  };
}

/** Mask with 1 where the value occurs and 0 elsewhere. */
const maskWhere = ({ width, height, data }: Mask, value: number): Mask => ({
  width,
  height,
  data: data.map((v) => (v === value ? 1 : 0)),
});

/** Resamples a mask to the size of the painter's masks, by nearest neighbour. */
function resampleMask(mask: Mask, width: number, height: number): Mask {
  const to = fullMask(width, height);
  const data = to.data.map((_, i) => {
    const x = Math.floor((((i % to.width) + 0.5) / to.width) * mask.width);
    const y = Math.floor(((Math.floor(i / to.width) + 0.5) / to.height) * mask.height);
    return mask.data[y * mask.width + x]!;
  });
  return { ...to, data };
}

/** Dilates by one cell: along a transparent edge the stored JPEG blends the subject with black. */
function dilateMask(mask: Mask): Mask {
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

/** Pixels to gather (1): kept and not transparent; undefined for all. */
export function gatheringMask({
  mask,
  transparentMask: clear,
}: Pick<GatheringSettings, 'mask' | 'transparentMask'>): Mask | undefined {
  if (!clear) return mask ?? undefined;
  const { width, height } = clear;
  return { width, height, data: clear.data.map((v, i) => (v === 1 ? 0 : (mask?.data[i] ?? 1))) };
}

/** The mask in its stored form: 0 erased, 1 kept, {@link TRANSPARENT} transparent. */
export function storedMask({
  mask,
  transparentMask: clear,
  width,
  height,
}: GatheringSettings): Mask {
  const kept = mask ?? fullMask(width, height);
  return clear
    ? { ...kept, data: kept.data.map((v, i) => (clear.data[i] === 1 ? TRANSPARENT : v)) }
    : kept;
}

/** White balance from a stated light. */
export const whiteBalanceFromStated = (light: NamedLight): AppliedWhiteBalance => ({
  kind: 'stated',
  light,
  matrix: whiteBalanceForLight(light).matrix,
});

/**
 * White balance from a neutral spot, as it is stored.
 * @param at position and patch side, fractions 0…1; grey: reflectance of a card
 * @param size of the gathered image, px
 * @returns null if the setting has no spot
 */
export function whiteBalanceFromSpot(
  { matrix, by }: WhiteBalance,
  at: { x: number; y: number; patch: number; grey?: number },
  size: { width: number; height: number },
): AppliedWhiteBalance | null {
  if (by.kind !== 'spot') return null;
  const { linear, side } = by.spot;
  const before = linear.map((v) => Math.max(v, 1e-4)) as [number, number, number];
  const after = multiplyColumn(matrix, ...before);
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
  return { kind: 'spot', spot, matrix: whiteBalanceMatrix(spot) };
}

/**
 * White-balance matrix for linear sRGB, from the stored gains. The spot became neutral, so each of
 * its linear channels was (grey or 1) ÷ gain. Bradford adaptation; a grey card also sets exposure.
 */
export function whiteBalanceMatrix({ gains, grey }: NeutralSpot): Matrix {
  const [r, g, b] = gains.map((gain) => (grey ?? 1) / gain) as [number, number, number];
  const xyz = xyzOfLinear(r, g, b);
  const adapted = rgbAdaptationMatrix(xyz, RGB_WHITE);
  if (grey === undefined) return adapted;
  const exposure = (100 * grey) / xyz[1];
  return product(diagonal(exposure, exposure, exposure), adapted);
}

/** Matrix for linear sRGB from one white balance to another. */
export function rebalanceMatrix(
  from: AppliedWhiteBalance | null,
  to: AppliedWhiteBalance | null,
): Matrix {
  const back = from ? inverse(from.matrix) : null;
  if (!back) return to?.matrix ?? diagonal(1, 1, 1);
  return to ? product(to.matrix, back) : back;
}
