import { type ColourSteps, stepsBetween } from '../colour/difference-components.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { ok, type Result } from '../result.ts';
import type { ConstraintFault, Constraints } from './constraints.ts';
import { type Mixture, REACHABLE_DELTA_E } from './mixture-types.ts';
import { nearestColourFinder } from './nearest-colour.ts';

export type Axis = 'chroma' | 'lightness' | 'hue';

/** Why a shelf does not reach a target, from its nearest mixture. */
export interface Shortfall {
  /** The axis that falls short most. */
  readonly axis: Axis;
  /** From the target to the mixture, in units of about 1 CIEDE2000. */
  readonly steps: ColourSteps;
  /** Axes on which the mixture is within {@link REACHABLE_DELTA_E} of the target. */
  readonly kept: readonly Axis[];
  readonly deltaE00: number;
  readonly target: Lab;
  readonly nearest: Lab;
}

/** C*ab below which a target has no hue or chroma to keep. */
const HUELESS = 6;

/** The shortfall of a mixture; null if it reaches its target. */
export function shortfallOf(
  target: Lab,
  mixture: Pick<Mixture, 'lab' | 'deltaE00'>,
): Shortfall | null {
  if (mixture.deltaE00 <= REACHABLE_DELTA_E) return null;
  const steps = stepsBetween(target, mixture.lab);
  const sizes: Record<Axis, number> = {
    chroma: Math.abs(steps.chroma),
    lightness: Math.abs(steps.value),
    hue: Math.abs(steps.hue),
  };
  const hued = chroma(target) >= HUELESS;
  const axes = (Object.keys(sizes) as Axis[]).sort((a, b) => sizes[b] - sizes[a]);
  return {
    axis: axes[0]!,
    steps,
    // The axis with the largest error always counts as given up.
    kept: axes
      .slice(1)
      .filter((axis) => sizes[axis] <= REACHABLE_DELTA_E && (axis === 'lightness' || hued))
      .reverse(),
    deltaE00: mixture.deltaE00,
    target,
    nearest: mixture.lab,
  };
}

/** The effect of adding one pigment to the shelf. */
export interface MissingPigment {
  readonly pigment: string;
  readonly label: string;
  readonly deltaE00: number;
  readonly reachable: boolean;
}

/** CIEDE2000 that a pigment must gain to be listed. */
const WORTH = 1;

/**
 * Pigments not on the shelf that would bring the nearest mixture closer to a target, best first.
 * @param further paints that could be bought; those already on the shelf are skipped
 * @returns a fault if no mixture of the shelf meets the constraints
 */
export function missingPigmentsFor(
  target: Lab,
  shelf: Shelf,
  further: readonly ShelfPaint[],
  { most = 4, constraints = {} }: { most?: number; constraints?: Constraints } = {},
): Result<MissingPigment[], ConstraintFault> {
  const { inStock, ...wishes } = constraints;
  const now = nearestColourFinder(shelf, most, constraints);
  if (!now.ok) return now;
  const farthest = now.value.of(target, true)!.deltaE00 - WORTH;
  const nearest = (paint: ShelfPaint): number => {
    const all = { ...wishes, ...(inStock && { inStock: [...inStock, paint.pigment] }) };
    const on = nearestColourFinder({ ...shelf, paints: [...shelf.paints, paint] }, most, all);
    return on.ok ? on.value.of(target, true)!.deltaE00 : Number.POSITIVE_INFINITY;
  };
  const isHere = ({ pigment }: ShelfPaint) =>
    shelf.paints.some((p) => p.pigment === pigment) && (inStock?.includes(pigment) ?? true);
  return ok(
    further
      .filter((paint) => !isHere(paint))
      .map((paint) => {
        const deltaE00 = nearest(paint);
        const { pigment, label } = paint;
        return { pigment, label, deltaE00, reachable: deltaE00 <= REACHABLE_DELTA_E };
      })
      .filter((lack) => lack.deltaE00 <= farthest)
      .sort((a, b) => a.deltaE00 - b.deltaE00),
  );
}
