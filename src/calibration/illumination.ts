import { Matrix, solve } from 'ml-matrix';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import type { CardPhotograph } from './card-photograph.ts';
import type { Homography, Point } from './homography.ts';
import { median, type Rgb, type RobustColour, robustMeanColour } from './robust-mean.ts';
import { PAPER_MM, type SwatchCard } from './swatch-card.ts';

/** Illumination over the page, estimated from its bare paper. */
export interface Illumination {
  /** Linear RGB of lit paper at a point of the page (millimetres). */
  at(x: number, y: number): Rgb;
  /** Brightest over darkest place. */
  readonly ratio: number;
  /** Largest over smallest red-to-green or blue-to-green ratio over the places. */
  readonly colourRatio: number;
  /** Root mean square of the relative residual, without outliers. */
  readonly residual: number;
  /** Share of the paper samples that are shaded, glossy or soiled. */
  readonly outliers: number;
}

/** Limits beyond which illumination cannot be corrected; our own judgement, not published. */
export const ILLUMINATION_LIMITS = {
  ratio: 2,
  colourRatio: 1.12,
  outliers: 0.22,
  residual: 0.035,
  /** Linear green of the paper: below this an 8-bit photograph has too few levels. */
  darkest: 0.04,
  /** Strongest over weakest primary of the paper: gains cannot fully remove a stronger cast. */
  cast: 2.5,
} as const;

/**
 * Estimates the illumination as a quadratic polynomial in the logarithm of each channel, fitted to
 * the bare paper between the places by iteratively reweighted least squares (Tukey's biweight), so
 * that shaded or soiled spots have no influence.
 */
export function estimateIllumination(
  pixels: CardPhotograph,
  card: SwatchCard,
  page: Homography,
): Result<Illumination, CalibrationFault> {
  const spots = paperSpots(card).flatMap((at) => {
    const seen = robustMeanColour(pixels, rectanglePoints(page, at, 1.6, 1.6));
    return seen === null ? [] : [{ at, seen }];
  });
  const clipped = spots.filter(({ seen }) => seen.clipped > 0.3).length;
  if (spots.length < 12) return fail({ code: 'card-none' });
  if (clipped > 0.3 * spots.length)
    return fail({ code: 'card-clipped', place: card.places[0]!.number, label: 'the paper' });
  const paper = [0, 1, 2].map((c) => median(spots.map(({ seen }) => seen.rgb[c]!)));
  if (
    !(paper[1]! > ILLUMINATION_LIMITS.darkest) ||
    spots.some(({ seen }) => Math.min(...seen.rgb) <= 0)
  )
    return fail({ code: 'card-dark' });
  const ratio = Math.max(...paper) / Math.min(...paper);
  if (ratio > ILLUMINATION_LIMITS.cast) return fail({ code: 'card-light-coloured', ratio });
  const fitted = fitLight(spots, card);
  if (
    fitted.outliers > ILLUMINATION_LIMITS.outliers ||
    fitted.residual > ILLUMINATION_LIMITS.residual
  ) {
    // A hard edge between two lights causes outliers too; its colour distinguishes it from a
    // shadow.
    if (colourSpread(spots) > ILLUMINATION_LIMITS.colourRatio)
      return fail({ code: 'card-two-lights', ratio: colourSpread(spots) });
    return fail({ code: 'card-shadow', share: fitted.outliers });
  }
  if (fitted.colourRatio > ILLUMINATION_LIMITS.colourRatio)
    return fail({ code: 'card-two-lights', ratio: fitted.colourRatio });
  if (fitted.ratio > ILLUMINATION_LIMITS.ratio)
    return fail({ code: 'card-light-uneven', ratio: fitted.ratio });
  return ok(fitted);
}

interface PaperSample {
  readonly at: Point;
  readonly seen: RobustColour;
}

function fitLight(spots: readonly PaperSample[], card: SwatchCard): Illumination {
  const [width, height] = PAPER_MM[card.paper];
  const terms = ([x, y]: Point): number[] => {
    const [u, v] = [(2 * x) / width - 1, (2 * y) / height - 1];
    return [1, u, v, u * u, u * v, v * v];
  };
  const A = spots.map(({ at }) => terms(at));
  const weights = new Float64Array(spots.length).fill(1);
  let coefficients: number[][] = [];
  let off: number[] = [];
  let deviation = 0;
  for (let pass = 0; pass < 12; pass++) {
    const root = Array.from(weights, Math.sqrt);
    const weighted = new Matrix(A.map((row, i) => row.map((v) => v * root[i]!)));
    coefficients = [0, 1, 2].map((c) => {
      const b = spots.map(({ seen }, i) => Math.log(seen.rgb[c]!) * root[i]!);
      return solve(weighted, Matrix.columnVector(b), true).to1DArray();
    });
    off = spots.map(({ seen }, i) =>
      Math.max(
        ...coefficients.map((each, c) =>
          Math.abs(Math.log(seen.rgb[c]!) - dotProduct(each, A[i]!)),
        ),
      ),
    );
    deviation = Math.max(1.4826 * median(off), 0.004);
    for (let i = 0; i < weights.length; i++) {
      const u = off[i]! / (4 * deviation);
      weights[i] = u < 1 ? Math.max((1 - u * u) ** 2, 1e-6) : 1e-6;
    }
  }
  const at = (x: number, y: number): Rgb => {
    const row = terms([x, y]);
    return coefficients.map((each) => Math.exp(dotProduct(each, row))) as unknown as Rgb;
  };
  const lights = card.places.map((place) => at(place.x, place.y));
  const greens = lights.map(([, g]) => g);
  const kept = off.filter((_, i) => weights[i]! > 1e-5);
  return {
    at,
    ratio: Math.max(...greens) / Math.min(...greens),
    colourRatio: Math.max(
      rangeOf(lights.map(([r, g]) => r / g)),
      rangeOf(lights.map(([, g, b]) => b / g)),
    ),
    residual: Math.sqrt(kept.reduce((sum, v) => sum + v * v, 0) / Math.max(kept.length, 1)),
    outliers: off.filter((v) => v > Math.max(4 * deviation, 0.05)).length / off.length,
  };
}

const dotProduct = (p: readonly number[], q: readonly number[]): number =>
  p.reduce((sum, v, i) => sum + v * q[i]!, 0);
const rangeOf = (values: readonly number[]): number => Math.max(...values) / Math.min(...values);

/** Range of the paper's colour over the page, without the extreme twelfth at either end. */
function colourSpread(spots: readonly PaperSample[]): number {
  const spread = (of: (rgb: Rgb) => number) => {
    const sorted = spots.map(({ seen }) => of(seen.rgb)).sort((p, q) => p - q);
    const cut = Math.floor(sorted.length / 12);
    return sorted.at(-1 - cut)! / sorted[cut]!;
  };
  return Math.max(
    spread(([r, g]) => r / g),
    spread(([, g, b]) => b / g),
  );
}

/** Points of bare paper (millimetres): beside the places and at regular steps along each row. */
function paperSpots({ places, paper }: SwatchCard): Point[] {
  const [width] = PAPER_MM[paper];
  const rows = [...new Set(places.map(({ y }) => y))];
  return rows.flatMap((y) => {
    const line = places.filter((place) => place.y === y);
    const tall = line[0]!.height;
    const xs = new Set<number>();
    for (const place of line)
      for (const x of [place.x - place.width / 2 - 5, place.x + place.width / 2 + 5])
        xs.add(Math.round(x * 10) / 10);
    for (let x = 12; x <= width - 12; x += 18) xs.add(x);
    return [...xs]
      .filter((x) => x > 6 && x < width - 6)
      .filter((x) => line.every((place) => Math.abs(x - place.x) >= place.width / 2 + 3))
      .flatMap((x): Point[] => [
        [x, y - tall / 4],
        [x, y + tall / 4],
      ]);
  });
}

/**
 * Sample points (pixels) of a rectangle of the page, centred on a point. One per pixel of the
 * photograph, at most 4 per millimetre.
 * @param width, height in millimetres
 */
export function rectanglePoints(
  page: Homography,
  [x, y]: Point,
  width: number,
  height: number,
): Point[] {
  const fine = Math.min(page.scale(x, y), 4);
  const columns = Math.max(3, Math.round(width * fine));
  const rows = Math.max(3, Math.round(height * fine));
  return Array.from({ length: columns * rows }, (_, i) => {
    const u = ((i % columns) + 0.5) / columns - 0.5;
    const v = (Math.floor(i / columns) + 0.5) / rows - 0.5;
    return page.at(x + u * width, y + v * height);
  });
}
