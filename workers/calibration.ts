import {
  type Calibration,
  calibratePaints,
  type PaintToFit,
} from '../src/calibration/calibrate-paints.ts';
import type { CalibrationFault } from '../src/calibration/calibration-fault.ts';
import type { CardPhotograph } from '../src/calibration/card-photograph.ts';
import type { Point } from '../src/calibration/homography.ts';
import type { PaintedSwatch } from '../src/calibration/painted-swatch.ts';
import { readCard } from '../src/calibration/read-card.ts';
import { readTouched, type Touch } from '../src/calibration/read-touched.ts';
import { type Suggestion, suggestSwatches } from '../src/calibration/suggest-swatches.ts';
import type { SwatchCard } from '../src/calibration/swatch-card.ts';
import type { ReadOptions, SwatchCardReading } from '../src/calibration/swatch-card-reading.ts';
import type { Surface } from '../src/optics/surface.ts';
import type { PhotoFault, PhotoRemark } from '../src/photo/image-file.ts';
import { ok, type Result } from '../src/result.ts';
import type { JobResult } from './job-protocol.ts';
import { readPixels, type StoredPhoto } from './photo.ts';

/** Options for reading a photograph; points are fractions of its width and height. */
export type Shared = Pick<ReadOptions, 'references' | 'chart'> & {
  /** The four corner marks of a card, as touched by the painter. */
  readonly corners?: readonly Point[];
};

/** Reads a photographed card by its marks. */
export interface ReadJob {
  readonly kind: 'read';
  readonly file: Blob;
  readonly plan: SwatchCard;
  readonly options: Shared;
}
/** Reads a photograph at the touched places. */
export interface TouchJob {
  readonly kind: 'touch';
  readonly file: Blob;
  readonly touches: readonly Touch[];
  readonly options: Shared;
}
/** Fits K and S to all observed swatches. */
export interface FitJob {
  readonly kind: 'fit';
  readonly white: string;
  readonly paints: readonly PaintToFit[];
  readonly swatches: readonly PaintedSwatch[];
  readonly surface: Surface;
}
export type CalibrateJob = ReadJob | TouchJob | FitJob;

/**
 * The reading of a photograph, its points as fractions of width and height, and remarks on the
 * file.
 */
export type PhotoReading = SwatchCardReading & {
  readonly photoRemarks: readonly PhotoRemark[];
};
export type Read = Result<PhotoReading, PhotoFault | CalibrationFault>;
/**
 * A fit without its posterior, which only the worker needs, plus suggested swatches to paint next.
 */
export type FitFound = Omit<Calibration, 'posterior'> & {
  readonly suggestions: readonly Suggestion[];
};
export type FitResult = Result<FitFound, CalibrationFault>;

export type CalibrateNews =
  | { readonly kind: 'kept'; readonly kept: StoredPhoto }
  | { readonly kind: 'done'; readonly done: number };

/** Executes a calibration job and posts its progress. */
export function runCalibrationJob(
  job: CalibrateJob,
  tell: (news: CalibrateNews) => void,
): Promise<JobResult<Read>> | JobResult<FitResult> {
  return job.kind === 'fit' ? { value: fitted(job, tell) } : look(job, tell);
}

async function look(
  job: ReadJob | TouchJob,
  tell: (news: CalibrateNews) => void,
): Promise<JobResult<Read>> {
  const read = await readPixels(job.file, (kept) => tell({ kind: 'kept', kept }));
  if (!read.ok) return { value: read };
  tell({ kind: 'done', done: 0.6 });
  const { pixels, remarks } = read.value;
  const whole = inPixels(pixels, job.options);
  const reading =
    job.kind === 'read'
      ? readCard(pixels, job.plan, whole)
      : readTouched(
          pixels,
          job.touches.map((touch) => ({ ...touch, at: scaled(pixels, touch.at) })),
          whole,
        );
  if (!reading.ok) return { value: reading };
  const { places, references, ...rest } = reading.value;
  const asShares = (places: SwatchCardReading['places']) =>
    places.map((place) => ({
      ...place,
      corners: place.corners.map(([x, y]): Point => [x / pixels.width, y / pixels.height]),
    }));
  return {
    value: ok({
      ...rest,
      places: asShares(places),
      references: asShares(references),
      photoRemarks: remarks,
    }),
  };
}

const scaled = ({ width, height }: CardPhotograph, [x, y]: Point): Point => [x * width, y * height];

function inPixels(picture: CardPhotograph, { corners, chart, references }: Shared) {
  const all = (points: readonly Point[]) => points.map((point) => scaled(picture, point));
  return {
    ...(references ? { references } : {}),
    ...(corners ? { corners: all(corners) } : {}),
    ...(chart ? { chart: { ...chart, corners: all(chart.corners) } } : {}),
  };
}

/** The number of rounds of a fit is unknown: each is assumed to do a quarter of the rest. */
const left = (round: number): number => 0.75 ** round;

function fitted(
  { white, paints, swatches, surface }: FitJob,
  tell: (news: CalibrateNews) => void,
): FitResult {
  const found = calibratePaints(white, paints, swatches, surface, {
    proceed: (round) => {
      tell({ kind: 'done', done: 0.9 * (1 - left(round)) });
      return true;
    },
  });
  if (!found.ok) return found;
  const { posterior: _, ...rest } = found.value;
  return ok({ ...rest, suggestions: suggestSwatches(found.value) });
}
