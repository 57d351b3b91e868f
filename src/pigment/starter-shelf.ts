import type { Surface } from '../optics/surface.ts';
import {
  BUILT_IN_CURVES,
  type BuiltInCurve,
  builtInCurveOf,
  builtInPaintOf,
} from './built-in-curves.ts';
import type { Shelf, ShelfPaint } from './shelf.ts';
import { draftOf, type Stock } from './stock.ts';

/** Saunderson constants of the built-in paints: glossy, specular reflection included. */
export const STARTER_SURFACE: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
export const STARTER_WHITE = 'lead_white';

/** A built-in pigment as a paint of a shelf; null for an id without a curve. */
export function ownPaint(id: string): ShelfPaint | null {
  const row = builtInCurveOf(id);
  const paint = builtInPaintOf(id);
  return row === null || paint === null ? null : { pigment: id, label: row.name, paint };
}

function shelfOf(name: string, rows: readonly BuiltInCurve[]): Shelf {
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

/** Shelf of a new book: the pigments of a period studio. */
export const starterShelf = (): Shelf =>
  shelfOf(
    'starter shelf',
    BUILT_IN_CURVES.filter(({ starter }) => starter),
  );

/** Shelf of all pigments with built-in curves, period pigments and stand-ins. */
export const wholeShelf = (): Shelf => shelfOf('every pigment', BUILT_IN_CURVES);

/** Stock of a new book: a tube of every pigment of the starter shelf, amounts unknown. */
export const starterStock = (): Stock => ({
  name: 'starter shelf',
  surface: STARTER_SURFACE,
  white: STARTER_WHITE,
  entries: BUILT_IN_CURVES.filter(({ starter }) => starter).map(({ id }) => ({
    ...draftOf(id),
    id,
  })),
  own: [],
});
