import { deltaE00 } from '../colour/difference.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import { labOfLinear } from '../colour/rgb.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import type { CardPhotograph } from './card-photograph.ts';
import { chartCorrection, type PlacedChart } from './chart-correction.ts';
import type { CorrectionError, CorrectionKind } from './colour-correction.ts';
import type { Point } from './homography.ts';
import type { Illumination } from './illumination.ts';
import type { Rgb, RobustColour } from './robust-mean.ts';
import type { CardPlace } from './swatch-card.ts';
import {
  type References,
  type ToneCorrection,
  toneCorrectionOf,
  USUAL_REFERENCES,
} from './tone-correction.ts';

/** Observed colour of one place of a photographed card. */
interface ObservedPlace {
  readonly place: CardPlace;
  /** CIELAB (D65), corrected by the references and the chart. */
  readonly lab: Lab;
  /** Share of its pixels without gloss and dust, 0…1. */
  readonly kept: number;
  /** Standard deviation within the place, roughly in L*. */
  readonly uneven: number;
  /** Its corners in pixels, clockwise from the top left, for an overlay. */
  readonly corners: readonly Point[];
}

/** What was corrected in a reading, and what to mind in it. */
export type CardRemark =
  | { readonly code: 'light-corrected'; readonly ratio: number }
  | { readonly code: 'contrast-corrected'; readonly exponent: number }
  | { readonly code: 'uneven-places'; readonly places: readonly number[] }
  | { readonly code: 'no-chart' };

/** Observed colours of a photographed card. */
export interface SwatchCardReading {
  /** The painted places, in the order of the card. */
  readonly places: readonly ObservedPlace[];
  /** The references, after correction. */
  readonly references: readonly ObservedPlace[];
  /** Brightest over darkest place, before correction. */
  readonly unevenness: number;
  /** Relative residual of the illumination model on the paper. */
  readonly residual: number;
  /** Largest CIEDE2000 of a white or grey reference from its known colour, after correction. */
  readonly referenceResidual: number;
  /** Errors on the chart's patches; null without a chart. */
  readonly chart: (CorrectionError & { readonly kind: CorrectionKind }) | null;
  /** Expected standard deviation of each of L*, a*, b*: smaller with a chart. */
  readonly sd: number;
  readonly remarks: readonly CardRemark[];
}

export interface ReadOptions {
  /** Known colours of the references; default {@link USUAL_REFERENCES}. */
  readonly references?: References;
  /** A chart of 24 patches in the same photograph. */
  readonly chart?: PlacedChart;
}

/** One sampled place, corrected for the illumination. */
export interface LitSample {
  readonly place: CardPlace;
  readonly corners: readonly Point[];
  readonly sampled: RobustColour;
  /** Linear RGB divided by the light at the place. */
  readonly rgb: Rgb;
}

/** Converts samples corrected for illumination to colours, with checks of the references. */
export function readingFromSamples(
  pixels: CardPhotograph,
  even: readonly LitSample[],
  light: Pick<Illumination, 'at' | 'ratio' | 'residual' | 'outliers'>,
  options: ReadOptions,
): Result<SwatchCardReading, CalibrationFault> {
  const known = options.references ?? USUAL_REFERENCES;
  const of = (kind: CardPlace['kind']) => even.filter(({ place }) => place.kind === kind);
  const [whites, greys] = [of('white'), of('grey')];
  const tone = toneCorrectionOf(meanOf(whites), meanOf(greys), known, pixels.space);
  if (!tone.ok) return tone;

  let toLab = (rgb: Rgb): Lab => labOfLinear(...rgb, pixels.space);
  let chart: SwatchCardReading['chart'] = null;
  if (options.chart) {
    // The chart lies outside the page's model of light: use the light of the nearest place.
    const near = (x: number, y: number): Rgb => {
      const nearest = even
        .map(({ place, corners }) => ({ place, far: farFrom(corners, x, y) }))
        .reduce((best, each) => (each.far < best.far ? each : best));
      return light.at(nearest.place.x, nearest.place.y);
    };
    const fitted = chartCorrection(pixels, options.chart, near, tone.value);
    if (!fitted.ok) return fitted;
    toLab = fitted.value.correction.labOf;
    chart = { ...fitted.value.residual, kind: fitted.value.correction.kind };
  }
  const asSeen = ({ place, corners, sampled, rgb }: LitSample): ObservedPlace => ({
    place,
    corners,
    lab: toLab(tone.value.at(rgb)),
    kept: sampled.kept,
    uneven: 100 * sampled.spread,
  });
  const all = even.map(asSeen);
  const references = all.filter(({ place }) => place.kind !== 'paint');
  const wrong = wrongReference(references);
  if (wrong) return fail({ code: 'card-reference', place: wrong.number, label: wrong.label });
  const places = all.filter(({ place }) => place.kind === 'paint');
  const referenceResidual = Math.max(
    0,
    ...references
      .filter(({ place }) => place.kind === 'white' || place.kind === 'grey')
      .map(({ place, lab }) => deltaE00(lab, known[place.kind as 'white' | 'grey'])),
  );
  return ok({
    places,
    references,
    unevenness: light.ratio,
    residual: light.residual,
    referenceResidual,
    chart,
    sd: chart ? 1 : 1.5,
    remarks: remarksOf(places, light, tone.value, chart),
  });
}

export const divideRgb = (rgb: Rgb, by: Rgb): Rgb => [
  rgb[0] / by[0],
  rgb[1] / by[1],
  rgb[2] / by[2],
];

const meanOf = (of: readonly LitSample[]): Rgb =>
  [0, 1, 2].map((c) => of.reduce((sum, { rgb }) => sum + rgb[c]!, 0) / of.length) as unknown as Rgb;

function farFrom(corners: readonly Point[], x: number, y: number): number {
  return Math.min(...corners.map(([u, v]) => Math.hypot(u - x, v - y)));
}

/** Minimum share of a place without gloss and dust. */
const LEAST_KEPT = 0.55;
/** Maximum spread within a place (0.01 is about one L*); above, it has more than one colour. */
const MOST_SPREAD = 0.045;
/** Maximum share of clipped pixels; above, the place may be overexposed. */
const MOST_CLIPPED = 0.2;

/** Validates the sample of one place by itself; null if valid. */
export function sampleFaultOf(
  place: CardPlace,
  sampled: RobustColour | null,
): CalibrationFault | null {
  const { number, label } = place;
  if (sampled === null) return { code: 'card-out', place: number };
  // Clipped pixels that were rejected as outliers are gloss; more than that is overexposure.
  if (sampled.clipped > MOST_CLIPPED && sampled.clipped > 1.2 * (1 - sampled.kept))
    return { code: 'card-clipped', place: number, label };
  if (sampled.kept < LEAST_KEPT) return { code: 'card-gloss', place: number, label };
  if (sampled.spread > MOST_SPREAD) return { code: 'card-mixed', place: number, label };
  return null;
}

/** The first reference that is implausible beside the others; null if all are plausible. */
function wrongReference(references: readonly ObservedPlace[]): CardPlace | null {
  const lightest = Math.max(...references.map(({ lab }) => lab[0]));
  for (const { place, lab } of references) {
    if (place.kind === 'black' ? lab[0] > 45 || chroma(lab) > 14 : chroma(lab) > 8) return place;
    if (place.kind === 'white' && lab[0] < lightest - 6) return place;
    if (place.kind === 'grey' && (lab[0] > lightest - 12 || lab[0] < 20)) return place;
  }
  for (const kind of ['white', 'grey'] as const) {
    const same = references.filter(({ place }) => place.kind === kind);
    const [first, ...others] = same;
    const off = others.find(({ lab }) => deltaE00(lab, first!.lab) > 6);
    if (off) return off.place;
  }
  return null;
}

function remarksOf(
  places: readonly ObservedPlace[],
  light: Pick<Illumination, 'ratio'>,
  { exponent }: ToneCorrection,
  chart: SwatchCardReading['chart'],
): CardRemark[] {
  const uneven = places.filter((place) => place.uneven > 2.5).map(({ place }) => place.number);
  const remarks: CardRemark[] = [];
  if (light.ratio > 1.3) remarks.push({ code: 'light-corrected', ratio: light.ratio });
  if (Math.abs(exponent - 1) > 0.15) remarks.push({ code: 'contrast-corrected', exponent });
  if (uneven.length > 0) remarks.push({ code: 'uneven-places', places: uneven });
  if (chart === null) remarks.push({ code: 'no-chart' });
  return remarks;
}
