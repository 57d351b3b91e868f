import type { Lab } from '../colour/lab.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import type { CardPhotograph } from './card-photograph.ts';
import { CHART, chartHomographies } from './colour-chart.ts';
import {
  bestCorrection,
  type ColourCorrection,
  type CorrectionError,
} from './colour-correction.ts';
import type { Homography, Point } from './homography.ts';
import { type Rgb, robustMeanColour } from './robust-mean.ts';
import type { ToneCorrection } from './tone-correction.ts';

/** A 24-patch chart in a photograph. */
export interface PlacedChart {
  /** Its 24 colours (CIELAB, D65), see readChart(). */
  readonly labs: readonly Lab[];
  /** Centres of its four corner patches in pixels, in order around the chart. */
  readonly corners: readonly Point[];
}

/** Mean CIEDE2000 from which the chart counts as another chart or under another light. */
const POOR = 6;

/**
 * Fits a colour correction to a photographed chart, in the orientation whose colours fit best.
 * @param lightAt illumination at a pixel, by which samples are divided
 * @param tone    correction by the card's references, applied before the fit
 */
export function chartCorrection(
  pixels: CardPhotograph,
  { labs, corners }: PlacedChart,
  lightAt: (x: number, y: number) => Rgb,
  tone: ToneCorrection,
): Result<
  { readonly correction: ColourCorrection; readonly residual: CorrectionError },
  CalibrationFault
> {
  let best: { correction: ColourCorrection; residual: CorrectionError } | null = null;
  for (const way of chartHomographies(corners)) {
    const rgbs = samplesOf(pixels, way, lightAt, tone);
    if (rgbs === null) continue;
    const fitted = bestCorrection(rgbs, labs);
    if (best === null || fitted.residual.mean < best.residual.mean) best = fitted;
  }
  if (best === null) return fail({ code: 'chart-place' });
  if (!(best.residual.mean < POOR)) return fail({ code: 'chart-poor', mean: best.residual.mean });
  return ok(best);
}

/** Side of the sampled square at each patch centre, as a share of the patch distance. */
const SAMPLED_PATCH_SHARE = 0.4;

function samplesOf(
  pixels: CardPhotograph,
  way: Homography,
  lightAt: (x: number, y: number) => Rgb,
  tone: ToneCorrection,
): Rgb[] | null {
  const rgbs: Rgb[] = [];
  for (let patch = 0; patch < CHART.patches; patch++) {
    const [x, y] = [patch % CHART.columns, Math.floor(patch / CHART.columns)];
    const fine = Math.max(5, Math.min(40, Math.round(SAMPLED_PATCH_SHARE * way.scale(x, y))));
    const points = Array.from({ length: fine * fine }, (_, i): Point => {
      const u = ((i % fine) + 0.5) / fine - 0.5;
      const v = (Math.floor(i / fine) + 0.5) / fine - 0.5;
      return way.at(x + SAMPLED_PATCH_SHARE * u, y + SAMPLED_PATCH_SHARE * v);
    });
    const seen = robustMeanColour(pixels, points);
    if (seen === null) return null;
    const light = lightAt(...way.at(x, y));
    rgbs.push(tone.at(seen.rgb.map((v, c) => v / light[c]!) as unknown as Rgb));
  }
  return rgbs;
}
