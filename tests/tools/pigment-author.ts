import { Matrix, solve } from 'ml-matrix';
import { spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { opaque, type Paint } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { type Feature, type KsCurveModel, paintOf } from '../../src/pigment/curve-model.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import table from './pigment-targets.json' with { type: 'json' };

type Colour = readonly (number | null)[];

/** What one pigment's curve is authored towards; see the head of pigment-targets.json. */
export interface Brief {
  readonly id: string;
  readonly S: number;
  readonly slopeS: number;
  /** Fixed where it is given. */
  readonly slopeK?: number;
  readonly features: readonly Feature[];
  readonly targets: {
    readonly masstone: Colour;
    readonly tint4?: Colour;
    readonly tint16?: Colour;
  };
  readonly trust?: Partial<typeof table.trust>;
}
export const BRIEFS = table.pigments as readonly Brief[];

/** Under this per 100 nm a slope of ln K needs no reason. */
const SLOPE = 0.35;
/** Whites and chalk hardly absorb: where the search starts for them. */
const PALE_LEVEL = -6.5;

/**
 * A curve for a brief: least squares (Levenberg-Marquardt) over the level and slope of ln K, the level
 * of ln S and every feature, towards the target colours and, by their trust, towards their starts.
 * Rounded, so that no figure pretends to more than it knows.
 */
export function author(brief: Brief, white: Paint): KsCurveModel {
  const start = [
    brief.targets.masstone[0]! > 78 && brief.slopeK === 0 ? PALE_LEVEL : 0,
    brief.slopeK ?? 0,
    Math.log(brief.S),
    ...brief.features.flatMap(({ height, nm, width }) => [height, nm, width]),
  ];
  return rounded(
    curveOf(
      brief,
      leastSquares((at) => residuals(brief, white, start, at), start),
    ),
  );
}

function curveOf({ slopeK, slopeS, features }: Brief, at: readonly number[]): KsCurveModel {
  return {
    lnK: {
      level: at[0]!,
      slope: slopeK ?? at[1]!,
      features: features.map(({ kind }, i) => ({
        kind,
        height: at[3 + 3 * i]!,
        nm: at[4 + 3 * i]!,
        width: at[5 + 3 * i]!,
      })),
    },
    lnS: { level: at[2]!, slope: slopeS },
  };
}

function residuals(
  brief: Brief,
  white: Paint,
  start: readonly number[],
  at: readonly number[],
): number[] {
  const trust = { ...table.trust, ...brief.trust };
  const paint = paintOf(curveOf(brief, at));
  const { masstone, tint4, tint16 } = brief.targets;
  const colours = [
    [masstone, 0],
    [tint4, 4],
    [tint16, 16],
  ] as const;
  return [
    ...colours.flatMap(([target, parts]) => {
      if (target === undefined) return [];
      const R = opaque([1, parts], [paint, white], spectrum<'R'>());
      const lab = labOf(addSurface(R, STARTER_SURFACE));
      return target.flatMap((wanted, axis) => (wanted === null ? [] : [lab[axis]! - wanted]));
    }),
    at[1]! / SLOPE,
    (at[2]! - start[2]!) / trust.lnS,
    ...brief.features.flatMap((_, i) => [
      (at[3 + 3 * i]! - start[3 + 3 * i]!) / trust.height,
      (at[4 + 3 * i]! - start[4 + 3 * i]!) / trust.nm,
      (at[5 + 3 * i]! / start[5 + 3 * i]! - 1) / trust.width,
    ]),
  ];
}

const sumOfSquares = (values: readonly number[]) => values.reduce((sum, r) => sum + r * r, 0);

function leastSquares(of: (at: readonly number[]) => number[], start: readonly number[]): number[] {
  let at = [...start];
  let r = of(at);
  let damping = 1;
  for (let step = 0; step < 400 && damping < 1e12; step++) {
    const J = new Matrix(r.length, at.length);
    at.forEach((value, column) => {
      const h = 1e-5 * Math.max(1, Math.abs(value));
      const moved = of(at.with(column, value + h));
      moved.forEach((each, row) => {
        J.set(row, column, (each - r[row]!) / h);
      });
    });
    const normal = J.transpose().mmul(J);
    const gradient = J.transpose().mmul(Matrix.columnVector(r));
    for (let i = 0; i < at.length; i++) normal.set(i, i, normal.get(i, i) * (1 + damping) + 1e-12);
    const change = solve(normal, gradient).to1DArray();
    const next = at.map((value, i) => value - change[i]!);
    const tried = of(next);
    if (sumOfSquares(tried) < sumOfSquares(r)) {
      const gained = 1 - sumOfSquares(tried) / sumOfSquares(r);
      [at, r] = [next, tried];
      damping = Math.max(damping / 4, 1e-9);
      if (gained < 1e-10) break;
    } else damping *= 3;
  }
  return at;
}

function rounded({ lnK, lnS }: KsCurveModel): KsCurveModel {
  const to = (value: number, digits: number) => Number(value.toFixed(digits));
  return {
    lnK: {
      level: to(lnK.level, 2),
      slope: to(lnK.slope, 2),
      features: lnK.features.map(({ kind, height, nm, width }) => ({
        kind,
        height: to(height, 2),
        nm: to(nm, 0),
        width: to(width, 0),
      })),
    },
    lnS: { level: to(lnS.level, 2), slope: lnS.slope },
  };
}
