import { deltaE00 } from '../colour/difference.ts';
import { labOfLinear } from '../colour/rgb.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import type { CardPhotograph } from './card-photograph.ts';
import { findMarks } from './corner-marks.ts';
import { type Homography, homography, type Point, pageHomography } from './homography.ts';
import { estimateIllumination, rectanglePoints } from './illumination.ts';
import { planeOf } from './luminance-plane.ts';
import { robustMeanColour } from './robust-mean.ts';
import { type CardPlace, markCentres, type SwatchCard } from './swatch-card.ts';
import {
  divideRgb,
  type LitSample,
  type ReadOptions,
  readingFromSamples,
  type SwatchCardReading,
  sampleFaultOf,
} from './swatch-card-reading.ts';

export interface ReadCardOptions extends ReadOptions {
  /**
   * Centres of the corner marks in pixels as touched by the user, clockwise from the one with the
   * pupil.
   */
  readonly corners?: readonly Point[];
}

/** Sampled share of a place's width and height: its rim may be paper or a neighbour's paint. */
const SAMPLED_SHARE = 0.62;
/** Minimum pixels per millimetre, for enough pixels in a place. */
const LEAST_SCALE = 1.6;

/**
 * Reads a photographed card: finds its marks (or uses `corners`), rectifies the page, corrects the
 * illumination, samples every place without gloss and dust, then corrects the tone by the white and
 * grey references. Deterministic; does not change the pixels; a third of a second for 12
 * megapixels, mostly for finding the marks.
 */
export function readCard(
  pixels: CardPhotograph,
  card: SwatchCard,
  options: ReadCardOptions = {},
): Result<SwatchCardReading, CalibrationFault> {
  const page = pageOf(pixels, card, options.corners);
  if (!page.ok) return page;
  for (const place of card.places) {
    const fine = page.value.scale(place.x, place.y);
    if (fine < LEAST_SCALE) return fail({ code: 'card-small', pixelsPerMm: fine });
    for (const [x, y] of cornersOf(page.value, place))
      if (!(x >= 0 && y >= 0 && x < pixels.width && y < pixels.height))
        return fail({ code: 'card-out', place: place.number });
  }
  const light = estimateIllumination(pixels, card, page.value);
  if (!light.ok) return light;

  const seen = card.places.map((place) => {
    const points = rectanglePoints(
      page.value,
      [place.x, place.y],
      SAMPLED_SHARE * place.width,
      SAMPLED_SHARE * place.height,
    );
    return {
      place,
      corners: cornersOf(page.value, place),
      sampled: robustMeanColour(pixels, points),
    };
  });
  for (const { place, sampled } of seen) {
    const fault = sampleFaultOf(place, sampled);
    if (fault) return fail(fault);
  }
  const even = seen.map(
    ({ place, sampled, corners }): LitSample => ({
      place,
      corners,
      sampled: sampled!,
      rgb: divideRgb(sampled!.rgb, light.value.at(place.x, place.y)),
    }),
  );
  const blank = even.find((each) => each.place.kind !== 'white' && isPaper(each, card.white));
  if (blank)
    return fail({ code: 'card-blank', place: blank.place.number, label: blank.place.label });
  return readingFromSamples(pixels, even, light.value, options);
}

/**
 * Whether a place shows bare paper, which is 1, 1, 1 after division by the light. Pure white paint
 * may look the same and passes.
 */
function isPaper({ place, rgb }: LitSample, white: string): boolean {
  if (place.parts.length > 0 && place.parts.every(({ pigment }) => pigment === white)) return false;
  const paper = labOfLinear(0.85, 0.85, 0.85);
  return deltaE00(labOfLinear(0.85 * rgb[0], 0.85 * rgb[1], 0.85 * rgb[2]), paper) < 1.2;
}

function cornersOf(page: Homography, { x, y, width, height }: CardPlace): Point[] {
  const [u, v] = [width / 2, height / 2];
  return [
    page.at(x - u, y - v),
    page.at(x + u, y - v),
    page.at(x + u, y + v),
    page.at(x - u, y + v),
  ];
}

function pageOf(
  pixels: CardPhotograph,
  card: SwatchCard,
  corners: readonly Point[] | undefined,
): Result<Homography, CalibrationFault> {
  if (corners) {
    const found = corners.length === 4 ? homography(markCentres(card.paper), corners) : null;
    return found ? ok(found) : fail({ code: 'card-corners' });
  }
  const marks = findMarks(planeOf(pixels));
  const page = pageHomography(card, marks);
  if (page) return ok(page);
  if (marks.length === 0) return fail({ code: 'card-none' });
  return marks.length < 4
    ? fail({ code: 'card-cut', marks: marks.length })
    : fail({ code: 'card-none' });
}
