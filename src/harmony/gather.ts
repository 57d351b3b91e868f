import { forEachChunk } from '../chunked.ts';
import { distinctNamesOf } from '../colour/describe-colour.ts';
import { deltaE00 } from '../colour/difference.ts';
import { chroma } from '../colour/lab.ts';
import type { Matrix } from '../colour/matrix.ts';
import { type DownsampledImage, downsampled } from '../photo/downsample.ts';
import type { Mask } from '../photo/mask.ts';
import type { Pixels } from '../photo/pixels.ts';
import { fail, ok, type Result } from '../result.ts';
import { relabel, UNLABELLED } from '../segmentation/labels.ts';
import { MAX_COLOURS } from '../segmentation/region-merging.ts';
import {
  type Segmentation,
  type SegmentationFault,
  type SegmentationOptions,
  segmentImage,
} from '../segmentation/segment-image.ts';
import type { Gathered, GatheredColour, GatherRemark } from './harmony.ts';
import { labelMap } from './label-map.ts';
import { type CellConfidence, colourHistograms, ladder, localColour } from './local-colour.ts';

/** Why there is no harmony. */
export type GatherFault =
  | { readonly code: 'transparent' }
  | { readonly code: 'all-rubbed-out' }
  | { readonly code: 'stopped' };

export interface GatherOptions {
  /** Number of colours, 1…7; chosen automatically if omitted. */
  readonly colours?: number | undefined;
  /** Included pixels; everything opaque if omitted. */
  readonly mask?: Mask | undefined;
  /** White balance, applied in linear sRGB (photo/white-balance.ts). */
  readonly adapt?: Matrix | undefined;
  /** Called with progress 0…1. */
  readonly onProgress?: ((done: number) => void) | undefined;
  /** Polled now and then; true ends the job with the fault `stopped`. */
  readonly stopped?: (() => boolean) | undefined;
}

/** An accent covers less than this share of the area … */
const ACCENT_SHARE = 0.02;
/** … and is farther than this from every other colour (CIEDE2000, kL = 2). */
const ACCENT_FAR = 12;

/**
 * Gathers the harmony of a photograph: one to seven colours, each one object in light and shadow.
 * The same pixels give the same harmony to the last digit.
 * @returns the harmony, or a fault if nothing is included or the job is stopped
 * @throws RangeError if `colours` is not an integer 1…7 or the pixel data has the wrong length
 */
export function gather(pixels: Pixels, options: GatherOptions = {}): Result<Gathered, GatherFault> {
  const { mask, adapt, onProgress, stopped } = options;
  const { width, height } = pixels;
  const regions = segmentationOptions(options, (done) => onProgress?.(0.6 + 0.4 * done));
  const pause = (done: number) => {
    onProgress?.(0.6 * done);
    return stopped?.() ?? false;
  };
  const image = downsampled(pixels, { mask, adapt, pause });
  if (!image) return fail({ code: 'stopped' });
  onProgress?.(0.6);
  const harmony = harmonyOf(image, segmentImage(image, regions), {
    width,
    height,
    colours: options.colours,
  });
  if (harmony.ok) onProgress?.(1);
  return harmony;
}

/**
 * Options of the segmentation for a harmony; measuring its colours is the last fifth of the work.
 * @throws RangeError if `colours` is not an integer 1…7
 */
export function segmentationOptions(
  { colours, stopped }: Pick<GatherOptions, 'colours' | 'stopped'>,
  onProgress: ((done: number) => void) | undefined,
): SegmentationOptions {
  if (
    colours !== undefined &&
    !(Number.isInteger(colours) && colours >= 1 && colours <= MAX_COLOURS)
  )
    throw new RangeError(`a harmony has 1 to ${MAX_COLOURS} colours, not ${colours}`);
  return { regions: colours, stopped, onProgress: (done) => onProgress?.(0.8 * done) };
}

/**
 * The harmony of a segmented image. `segment-image.ts` makes the regions, in one thread or two.
 * @param photograph its size, and the number of colours that was asked for
 */
export function harmonyOf(
  image: DownsampledImage,
  segmentation: Result<Segmentation, SegmentationFault>,
  photograph: {
    readonly width: number;
    readonly height: number;
    readonly colours: number | undefined;
  },
): Result<Gathered, GatherFault> {
  if (!segmentation.ok) {
    const empty = image.opaque ? 'all-rubbed-out' : 'transparent';
    return fail({ code: segmentation.fault.code === 'empty' ? empty : 'stopped' });
  }
  const { width, height, colours: wanted } = photograph;
  const label = segmentation.value.label.slice();
  const colours = measureColours(image, label, segmentation.value);
  return ok({
    width,
    height,
    colours,
    labels: labelMap(image, label),
    remarks: remarksOn(width * height, image, colours, wanted),
  });
}

/**
 * Measures the colours of a labelling, sorted by share with accents last; renumbers `label` to
 * match.
 */
function measureColours(
  work: DownsampledImage,
  label: Uint8Array,
  confidence: CellConfidence,
): GatheredColour[] {
  const parts = colourHistograms(work, label, MAX_COLOURS, confidence).map((part) => ({
    part,
    lab: localColour(part),
  }));
  const marked = parts.map((p) => {
    const share = p.part.weight / work.includedPixels;
    const far = parts.every((q) => q === p || deltaE00(p.lab, q.lab, 2) > ACCENT_FAR);
    return { ...p, share, accent: parts.length > 1 && share < ACCENT_SHARE && far };
  });
  marked.sort(
    (p, q) =>
      Number(p.accent) - Number(q.accent) || q.share - p.share || p.part.colour - q.part.colour,
  );
  const order = new Uint8Array(256).fill(UNLABELLED);
  marked.forEach((p, i) => {
    order[p.part.colour] = i;
  });
  forEachChunk(label.length, (from, to) => relabel(order, label, from, to, label));
  const names = distinctNamesOf(marked.map((p) => p.lab));
  return marked.map(({ lab, share, accent, part }, i) => ({
    name: names[i]!,
    lab,
    share,
    accent,
    ladder: ladder(part),
  }));
}

/** What is unusual in the photograph. */
function remarksOn(
  pixelCount: number,
  image: DownsampledImage,
  colours: readonly GatheredColour[],
  requested: number | undefined,
): GatherRemark[] {
  const { clipped, includedPixels } = image;
  const remarks: GatherRemark[] = [];
  if (pixelCount < 64) remarks.push({ code: 'tiny-photograph' });
  else if (includedPixels < 64) remarks.push({ code: 'few-pixels' });
  if (clipped.white > 0.25) remarks.push({ code: 'blown-out', share: clipped.white });
  if (clipped.black > 0.5) remarks.push({ code: 'lost-in-black', share: clipped.black });
  const found = colours.length;
  if (found === 1 && requested === undefined) remarks.push({ code: 'one-colour' });
  if (requested !== undefined && found < requested)
    remarks.push({ code: 'fewer-colours', requested, found });
  if (colours.every(({ lab }) => chroma(lab) < 2)) remarks.push({ code: 'grey' });
  return remarks;
}
