import { forEachChunk } from '../chunked.ts';
import { distinctNamesOf } from '../colour/describe-colour.ts';
import { deltaE00 } from '../colour/difference.ts';
import type { Matrix } from '../colour/matrix.ts';
import { type DownsampledImage, downsampled } from '../photo/downsample.ts';
import type { Mask } from '../photo/mask.ts';
import type { Pixels } from '../photo/pixels.ts';
import { fail, ok, type Result } from '../result.ts';
import { boundaryStatistics } from '../segmentation/boundaries.ts';
import { type Consensus, consensusOf } from '../segmentation/consensus.ts';
import { colourHistogram, LIGHTNESS } from '../segmentation/histogram-kmeans.ts';
import { MAX_COLOURS } from '../segmentation/region-merging.ts';
import { prepareRuns, type RunBatch, segmentationRuns } from '../segmentation/segmentation-run.ts';
import { smoothImage } from '../segmentation/smoothing.ts';
import { type Superpixels, superpixelsOf } from '../segmentation/superpixels.ts';
import type { Gathered, GatheredColour } from './harmony.ts';
import { labelMap, UNLABELLED } from './label-map.ts';
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
  /** White balance, applied in linear sRGB (photo/neutral.ts). */
  readonly adapt?: Matrix | undefined;
  /** Called with progress 0…1. */
  readonly onProgress?: ((done: number) => void) | undefined;
  /** Polled now and then; true ends the job with the fault `stopped`. */
  readonly stopped?: (() => boolean) | undefined;
}

/** Options for an existing work image; width and height are the photograph's. */
export type GatherFromOptions = Pick<GatherOptions, 'colours' | 'onProgress' | 'stopped'> & {
  readonly width: number;
  readonly height: number;
};

/** Consensus sample sizes: numbers of runs, increased until the consensus is stable. */
const CONSENSUS_SIZES = [8, 64, 256];
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
  checkWanted(options.colours);
  const pause = (done: number) => {
    onProgress?.(0.6 * done);
    return stopped?.() ?? false;
  };
  const work = downsampled(pixels, { mask, adapt, pause });
  if (!work) return fail({ code: 'stopped' });
  onProgress?.(0.6);
  const { width, height } = pixels;
  return gatherFrom(work, {
    ...options,
    width,
    height,
    onProgress: (done) => onProgress?.(0.6 + 0.4 * done),
  });
}

function checkWanted(wanted: number | undefined): void {
  if (wanted !== undefined && !(Number.isInteger(wanted) && wanted >= 1 && wanted <= MAX_COLOURS))
    throw new RangeError(`a harmony has 1 to ${MAX_COLOURS} colours, not ${wanted}`);
}

/**
 * Gathers the harmony of a work image, for a shell that reads pixels strip by strip.
 * @throws RangeError if `colours` is not an integer 1…7
 */
function gatherFrom(
  work: DownsampledImage,
  options: GatherFromOptions,
): Result<Gathered, GatherFault> {
  const gathering = gatherStepwise(work, options);
  for (let turn = gathering.next(); ; ) {
    if (turn.done) return turn.value;
    turn = gathering.next(segmentationRuns(turn.value));
  }
}

/**
 * The same as a generator, for a shell with a second thread: it yields batches of segmentation runs
 * and receives their results in order. The result does not depend on where they ran.
 * @throws RangeError if `colours` is not an integer 1…7
 */
export function* gatherStepwise(
  work: DownsampledImage,
  { colours: wanted, width, height, onProgress, stopped }: GatherFromOptions,
): Generator<RunBatch, Result<Gathered, GatherFault>, readonly Uint8Array[]> {
  checkWanted(wanted);
  if (work.includedPixels === 0)
    return fail({ code: work.opaque ? 'all-rubbed-out' : 'transparent' });
  const flat = smoothImage(work);
  const bins = colourHistogram(flat, work.pixelCounts);
  const atoms = superpixelsOf(bins, LIGHTNESS);
  if (stopped?.()) return fail({ code: 'stopped' });
  onProgress?.(0.3);

  const cells = new Uint16Array(work.L.length);
  forEachChunk(cells.length, (from, to) => atomOfCells(bins.ofCell, atoms, from, to, cells));
  const edges = boundaryStatistics(flat, work.width, work.height, cells, atoms.count);
  const dealt = prepareRuns(atoms, edges, wanted);
  const trials: Uint8Array[] = [];
  let agreed: Consensus;
  let look = 0;
  do {
    if (stopped?.()) return fail({ code: 'stopped' });
    onProgress?.(0.4 + (0.4 * look) / CONSENSUS_SIZES.length);
    trials.push(...(yield { dealt, from: trials.length, to: CONSENSUS_SIZES[look]! }));
    agreed = consensusOf(atoms, trials, wanted);
  } while (!agreed.isStable && ++look < CONSENSUS_SIZES.length);
  const { group, confidence: sure } = agreed;
  const label = new Uint8Array(cells.length);
  const named = new Uint8Array(atoms.count + 1).fill(UNLABELLED);
  named.set(group);
  forEachChunk(cells.length, (from, to) => relabel(named, cells, from, to, label));
  if (stopped?.()) return fail({ code: 'stopped' });
  onProgress?.(0.8);

  const colours = measureColours(work, label, { cells, sure });
  onProgress?.(1);
  return ok({
    width,
    height,
    colours,
    labels: labelMap(work, label),
    remarks: remarks(width * height, work, colours, wanted),
  });
}

/** Superpixel of each cell; `count` for excluded cells. */
function atomOfCells(
  binOf: Int32Array,
  { count, ofBin }: Pick<Superpixels, 'count' | 'ofBin'>,
  from: number,
  to: number,
  cells: Uint16Array,
): void {
  for (let i = from; i < to; i++) {
    const bin = binOf[i]!;
    cells[i] = bin < 0 ? count : ofBin[bin]!;
  }
}

/** Maps numbers through a table. */
function relabel(
  named: Uint8Array,
  numbers: Uint8Array | Uint16Array,
  from: number,
  to: number,
  into: Uint8Array,
): void {
  for (let i = from; i < to; i++) into[i] = named[numbers[i]!]!;
}

/**
 * Measures the colours of a labelling, sorted by share with accents last; renumbers `label` to
 * match.
 */
function measureColours(
  work: DownsampledImage,
  label: Uint8Array,
  certainty: CellConfidence,
): GatheredColour[] {
  const parts = colourHistograms(work, label, MAX_COLOURS, certainty).map((part) => ({
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

/** Sentences about what is unusual in the photograph. */
function remarks(
  all: number,
  work: DownsampledImage,
  colours: readonly GatheredColour[],
  wanted: number | undefined,
): string[] {
  const said: string[] = [];
  if (all < 64)
    said.push('The photograph is only a few pixels large, so shares and ladder say little.');
  else if (work.includedPixels < 64)
    said.push('Only a few pixels are looked at, so shares and ladder say little.');
  if (work.clipped.white > 0.25)
    said.push(
      `${Math.round(work.clipped.white * 100)} % of what is looked at is blown out to white: its colour was lost in the camera.`,
    );
  if (work.clipped.black > 0.5)
    said.push(
      `${Math.round(work.clipped.black * 100)} % of what is looked at is black: its colour was lost in the dark.`,
    );
  if (colours.length === 1 && wanted === undefined) said.push('There is one colour in it.');
  if (wanted !== undefined && colours.length < wanted)
    said.push(`${wanted} colours were asked for, ${colours.length} could be told apart.`);
  if (colours.every((c) => Math.hypot(c.lab[1], c.lab[2]) < 2))
    said.push('The photograph is grey throughout.');
  return said;
}
