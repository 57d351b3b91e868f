import { deltaE00 } from '../../colour/difference.ts';
import { labOfLinear } from '../../colour/rgb.ts';
import { fail, ok, type Result } from '../../result.ts';
import { type Card, markCentres, type Place } from './card.ts';
import type { CalibrationFault } from './fault.ts';
import { around, lightOf } from './light.ts';
import { findMarks } from './marks.ts';
import type { Picture } from './picture.ts';
import { planeOf } from './plane.ts';
import { divided, type Even, faultOf, finish, type Reading, type ReadOptions } from './reading.ts';
import { sample } from './sample.ts';
import { type Homography, homography, type Point, straighten } from './straighten.ts';

export interface ReadCardOptions extends ReadOptions {
  /** Centres of the corner marks in pixels, clockwise from the one with the pupil, where they were touched by hand. */
  readonly corners?: readonly Point[];
}

/** Share of a place's width and height that is looked at: its rim may be paper or a neighbour's paint. */
const INNER = 0.62;
/** Fewer pixels to a millimetre leave a place too few pixels. */
const LEAST_SCALE = 1.6;

/**
 * Reads a photographed card: finds its marks (or takes the corners given), straightens the page, divides
 * away how the light falls, sets white and grey right, then samples every place without gloss and dust.
 * Deterministic; touches nothing; a third of a second for 12 megapixels, most of it the search for marks.
 */
export function readCard(
  pixels: Picture,
  card: Card,
  options: ReadCardOptions = {},
): Result<Reading, CalibrationFault> {
  const page = pageOf(pixels, card, options.corners);
  if (!page.ok) return page;
  for (const place of card.places) {
    const fine = page.value.scale(place.x, place.y);
    if (fine < LEAST_SCALE) return fail({ code: 'card-small', pixelsPerMm: fine });
    for (const [x, y] of cornersOf(page.value, place))
      if (!(x >= 0 && y >= 0 && x < pixels.width && y < pixels.height))
        return fail({ code: 'card-out', place: place.number });
  }
  const light = lightOf(pixels, card, page.value);
  if (!light.ok) return light;

  const seen = card.places.map((place) => {
    const points = around(
      page.value,
      [place.x, place.y],
      INNER * place.width,
      INNER * place.height,
    );
    return { place, corners: cornersOf(page.value, place), sampled: sample(pixels, points) };
  });
  for (const { place, sampled } of seen) {
    const fault = faultOf(place, sampled);
    if (fault) return fail(fault);
  }
  const even = seen.map(
    ({ place, sampled, corners }): Even => ({
      place,
      corners,
      sampled: sampled!,
      rgb: divided(sampled!.rgb, light.value.at(place.x, place.y)),
    }),
  );
  const blank = even.find((each) => each.place.kind !== 'white' && isPaper(each, card.white));
  if (blank)
    return fail({ code: 'card-blank', place: blank.place.number, label: blank.place.label });
  return finish(pixels, even, light.value, options);
}

/** Bare paper divided by its own light is 1, 1, 1. A white paint may come this near to it, and is let pass. */
function isPaper({ place, rgb }: Even, white: string): boolean {
  if (place.parts.length > 0 && place.parts.every(({ pigment }) => pigment === white)) return false;
  const paper = labOfLinear(0.85, 0.85, 0.85);
  return deltaE00(labOfLinear(0.85 * rgb[0], 0.85 * rgb[1], 0.85 * rgb[2]), paper) < 1.2;
}

function cornersOf(page: Homography, { x, y, width, height }: Place): Point[] {
  const [u, v] = [width / 2, height / 2];
  return [
    page.at(x - u, y - v),
    page.at(x + u, y - v),
    page.at(x + u, y + v),
    page.at(x - u, y + v),
  ];
}

function pageOf(
  pixels: Picture,
  card: Card,
  corners: readonly Point[] | undefined,
): Result<Homography, CalibrationFault> {
  if (corners) {
    const found = corners.length === 4 ? homography(markCentres(card.paper), corners) : null;
    return found ? ok(found) : fail({ code: 'card-corners' });
  }
  const marks = findMarks(planeOf(pixels));
  const page = straighten(card, marks);
  if (page) return ok(page);
  if (marks.length === 0) return fail({ code: 'card-none' });
  return marks.length < 4
    ? fail({ code: 'card-cut', marks: marks.length })
    : fail({ code: 'card-none' });
}
