import type { Surface } from '../optics/surface.ts';
import { CURVES, type CurveRow, curveOf, ownCurve } from './curves.ts';
import type { Shelf, ShelfPaint } from './shelf.ts';
import { draftOf, type Stock } from './stock.ts';

/** How the paints of our own shelf meet the air: gloss, measured with its reflection (Saunderson). */
export const STARTER_SURFACE: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
export const STARTER_WHITE = 'lead_white';

/** One of our own pigments as a paint of a shelf; null for an id that has no curve. */
export function ownPaint(id: string): ShelfPaint | null {
  const row = curveOf(id);
  const paint = ownCurve(id);
  return row === null || paint === null ? null : { pigment: id, label: row.name, paint };
}

function shelfOf(name: string, rows: readonly CurveRow[]): Shelf {
  const paints = rows.map(({ id }) => ownPaint(id)!);
  return {
    name,
    basis: 'volume',
    surface: STARTER_SURFACE,
    white: STARTER_WHITE,
    paints,
    remarks: [],
  };
}

/** The pigments of an old studio that a new book has in stock. */
export const starterShelf = (): Shelf =>
  shelfOf(
    'starter shelf',
    CURVES.filter(({ starter }) => starter),
  );

/** Every pigment that we have a curve of, of the period and its stand-ins. */
export const wholeShelf = (): Shelf => shelfOf('every pigment', CURVES);

/** The stock of a new book: a tube of everything on the starter shelf, nothing weighed yet. */
export const starterStock = (): Stock => ({
  name: 'starter shelf',
  surface: STARTER_SURFACE,
  white: STARTER_WHITE,
  entries: CURVES.filter(({ starter }) => starter).map(({ id }) => ({ ...draftOf(id), id })),
  own: [],
});
