import type { Paint } from '../optics/opaque.ts';
import { type Curve, paintOf } from './curve.ts';
import table from './data/curves.json' with { type: 'json' };

/** A row of the table of built-in curves (data/curves.json). */
export interface CurveRow extends Curve {
  readonly id: string;
  readonly name: string;
  /** Whether it is on the starter shelf. */
  readonly starter: boolean;
}

function checked(row: (typeof table.curves)[number]): CurveRow {
  const features = row.lnK.features.map(({ kind, height, nm, width }) => {
    if (kind !== 'edge' && kind !== 'band') throw new RangeError(`${row.id} has a ${kind}`);
    if (!(width > 0)) throw new RangeError(`${row.id} has a width of ${width}`);
    return { kind, height, nm, width } as const;
  });
  return { ...row, lnK: { ...row.lnK, features } };
}

/** All pigments with built-in K and S. */
export const CURVES: readonly CurveRow[] = table.curves.map(checked);
const BY_ID = new Map(CURVES.map((row) => [row.id, row]));
const MADE = new Map<string, Paint>();

/** The table row of a pigment id; null without a built-in curve. */
export const curveOf = (id: string): CurveRow | null => BY_ID.get(id) ?? null;

/** Built-in K and S of a pigment id, computed once and shared; null without a curve. */
export function ownCurve(id: string): Paint | null {
  const row = BY_ID.get(id);
  if (row === undefined) return null;
  const made = MADE.get(id) ?? paintOf(row);
  MADE.set(id, made);
  return made;
}
