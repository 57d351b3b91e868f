import type { Paint } from '../optics/opaque.ts';
import { type KsCurveModel, paintOf } from './curve-model.ts';
import table from './data/curves.json' with { type: 'json' };

/** A row of the table of built-in curves (data/curves.json). */
export interface BuiltInCurve extends KsCurveModel {
  readonly id: string;
  readonly name: string;
  /** Whether it is on the starter shelf. */
  readonly starter: boolean;
}

function checked(row: (typeof table.curves)[number]): BuiltInCurve {
  const features = row.lnK.features.map(({ kind, height, nm, width }) => {
    if (kind !== 'edge' && kind !== 'band') throw new RangeError(`${row.id} has a ${kind}`);
    if (!(width > 0)) throw new RangeError(`${row.id} has a width of ${width}`);
    return { kind, height, nm, width } as const;
  });
  return { ...row, lnK: { ...row.lnK, features } };
}

/** All pigments with built-in K and S. */
export const BUILT_IN_CURVES: readonly BuiltInCurve[] = table.curves.map(checked);
const BY_ID = new Map(BUILT_IN_CURVES.map((row) => [row.id, row]));
const paintCache = new Map<string, Paint>();

/** The table row of a pigment id; null without a built-in curve. */
export const builtInCurveOf = (id: string): BuiltInCurve | null => BY_ID.get(id) ?? null;

/** Built-in K and S of a pigment id, computed once and shared; null without a curve. */
export function builtInPaintOf(id: string): Paint | null {
  const row = BY_ID.get(id);
  if (row === undefined) return null;
  const made = paintCache.get(id) ?? paintOf(row);
  paintCache.set(id, made);
  return made;
}
