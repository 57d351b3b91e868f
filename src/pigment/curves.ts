import type { Paint } from '../optics/opaque.ts';
import { type Curve, paintOf } from './curve.ts';
import table from './data/curves.json' with { type: 'json' };

/** A pigment of ours as the table holds it. */
export interface CurveRow extends Curve {
  readonly id: string;
  readonly name: string;
  /** In stock in a new studio. */
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

/** Every pigment that Kingcup has K and S of. */
export const CURVES: readonly CurveRow[] = table.curves.map(checked);
const BY_ID = new Map(CURVES.map((row) => [row.id, row]));
const MADE = new Map<string, Paint>();

export const curveOf = (id: string): CurveRow | null => BY_ID.get(id) ?? null;

/** K and S of one of our pigments, made once; null for an id that has no curve. */
export function ownCurve(id: string): Paint | null {
  const row = BY_ID.get(id);
  if (row === undefined) return null;
  const made = MADE.get(id) ?? paintOf(row);
  MADE.set(id, made);
  return made;
}
