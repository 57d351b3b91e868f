import { fail, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import type { CardPhotograph } from './card-photograph.ts';
import type { Point } from './homography.ts';
import { ILLUMINATION_LIMITS } from './illumination.ts';
import { type Rgb, robustMeanColour } from './robust-mean.ts';
import type { CardPlace } from './swatch-card.ts';
import {
  divideRgb,
  type LitSample,
  type ReadOptions,
  readingFromSamples,
  type SwatchCardReading,
  sampleFaultOf,
} from './swatch-card-reading.ts';

/** One touched point: a place of a card or of any sheet of swatches. */
export interface Touch {
  readonly place: Pick<CardPlace, 'number' | 'kind' | 'label' | 'parts'>;
  /** In pixels. */
  readonly at: Point;
  /** Half side of the sampled square in pixels; default a hundredth of the long edge. */
  readonly reach?: number;
}

/**
 * Reads swatches at points touched by the user, on any photograph with at least one white and one
 * grey reference. Several references also allow a correction of uneven illumination.
 */
export function readTouched(
  pixels: CardPhotograph,
  touches: readonly Touch[],
  options: ReadOptions = {},
): Result<SwatchCardReading, CalibrationFault> {
  const usual = Math.max(2, Math.round(Math.max(pixels.width, pixels.height) / 100));
  const seen: (LitSample & { at: Point })[] = [];
  for (const { place, at, reach = usual } of touches) {
    const [x, y] = at;
    const points = Array.from({ length: (2 * reach + 1) ** 2 }, (_, i): Point => {
      const side = 2 * reach + 1;
      return [x + (i % side) - reach, y + Math.floor(i / side) - reach];
    });
    const sampled = robustMeanColour(pixels, points);
    if (sampled === null) return fail({ code: 'touch-outside', place: place.number });
    const whole = { ...place, measure: '', x, y, width: 2 * reach, height: 2 * reach };
    const fault = sampleFaultOf(whole, sampled);
    if (fault) return fail(fault);
    const corners: Point[] = [
      [x - reach, y - reach],
      [x + reach, y - reach],
      [x + reach, y + reach],
      [x - reach, y + reach],
    ];
    seen.push({ place: whole, corners, sampled, rgb: sampled.rgb, at });
  }
  for (const kind of ['white', 'grey'] as const)
    if (!seen.some(({ place }) => place.kind === kind))
      return fail({ code: 'touch-reference-missing', kind });
  const plane = tiltOf(seen);
  const even = seen.map((each) => ({ ...each, rgb: divideRgb(each.rgb, plane.at(...each.at)) }));
  if (plane.ratio > ILLUMINATION_LIMITS.ratio)
    return fail({ code: 'card-light-uneven', ratio: plane.ratio });
  if (plane.colourRatio > ILLUMINATION_LIMITS.colourRatio)
    return fail({ code: 'card-two-lights', ratio: plane.colourRatio });
  return readingFromSamples(pixels, even, plane, options);
}

/**
 * Illumination as a linear gradient in log RGB, from references of the same kind at several points;
 * constant without at least two of a kind.
 */
function tiltOf(seen: readonly (LitSample & { readonly at: Point })[]) {
  const references = (['white', 'grey'] as const).flatMap((kind) => {
    const same = seen.filter(({ place }) => place.kind === kind);
    if (same.length < 2) return [];
    const mean = [0, 1, 2].map(
      (c) => same.reduce((sum, { rgb }) => sum + Math.log(rgb[c]!), 0) / same.length,
    );
    return same.map(({ at, rgb }) => ({ at, off: rgb.map((v, c) => Math.log(v) - mean[c]!) }));
  });
  const flat: Rgb = [1, 1, 1];
  const level = { at: (): Rgb => flat, ratio: 1, colourRatio: 1, residual: 0, outliers: 0 };
  if (references.length < 2) return level;
  const cx = references.reduce((sum, { at }) => sum + at[0], 0) / references.length;
  const cy = references.reduce((sum, { at }) => sum + at[1], 0) / references.length;
  const [xx, xy, yy] = [
    references.reduce((sum, { at }) => sum + (at[0] - cx) ** 2, 0),
    references.reduce((sum, { at }) => sum + (at[0] - cx) * (at[1] - cy), 0),
    references.reduce((sum, { at }) => sum + (at[1] - cy) ** 2, 0),
  ];
  // Ridge regularisation: collinear references determine the gradient only along their line.
  const ridge = 0.02 * (xx + yy) + 1e-9;
  const determinant = (xx + ridge) * (yy + ridge) - xy * xy;
  const slopes = [0, 1, 2].map((c) => {
    const bx = references.reduce((sum, { at, off }) => sum + (at[0] - cx) * off[c]!, 0);
    const by = references.reduce((sum, { at, off }) => sum + (at[1] - cy) * off[c]!, 0);
    return [
      ((yy + ridge) * bx - xy * by) / determinant,
      ((xx + ridge) * by - xy * bx) / determinant,
    ] as const;
  });
  const at = (x: number, y: number): Rgb =>
    slopes.map(([u, v]) => Math.exp(u * (x - cx) + v * (y - cy))) as unknown as Rgb;
  const lights = seen.map((each) => at(...each.at));
  const range = (of: (rgb: Rgb) => number) =>
    Math.max(...lights.map(of)) / Math.min(...lights.map(of));
  return {
    at,
    ratio: range(([, g]) => g),
    colourRatio: Math.max(
      range(([r, g]) => r / g),
      range(([, g, b]) => b / g),
    ),
    residual: 0,
    outliers: 0,
  };
}
